import '@fontsource/atkinson-hyperlegible-next/400.css';
import '@fontsource/atkinson-hyperlegible-next/400-italic.css';
import '@fontsource/atkinson-hyperlegible-next/600.css';
import '@fontsource/atkinson-hyperlegible-next/700.css';
import { mount } from 'svelte';
import Frame from './frame/Frame.svelte';
import './parts/tokens.css';
import './parts/base.css';

mount(Frame, { target: document.getElementById('app')! });
