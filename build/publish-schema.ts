/** Writes db/client-export.schema.json, the published shape of a client's export. Run it after a change of db/types. */
import { writeFileSync } from 'node:fs';
import { clientExportSchema } from '../db/types/client-export.ts';

const file = new URL('../db/client-export.schema.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(clientExportSchema(), null, 2)}\n`);
