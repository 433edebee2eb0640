/** The program's first file: nothing but the start, so that main.ts can be read and tested by itself. */
import { main } from './main.ts';

await main(process.argv);
