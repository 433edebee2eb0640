/** Schemas are walked, never compiled to functions: the window's policy forbids that, and would report the try. */
import { config } from 'zod';

config({ jitless: true });
