import '@fontsource/atkinson-hyperlegible-next/400.css';
import '@fontsource/atkinson-hyperlegible-next/400-italic.css';
import '@fontsource/atkinson-hyperlegible-next/600.css';
import '@fontsource/atkinson-hyperlegible-next/700.css';
import { mount } from 'svelte';
import Frame from './window/frame/Frame.svelte';
import './window/parts/tokens.css';
import './window/parts/base.css';

mount(Frame, { target: document.getElementById('app')! });
