/** Pictures for words, for those who find words hard: things of the house, on the field of 160 by 120. */
import { fine, ink, solid, type Stroke } from './strokes.ts';

export const pictureDrawings: Readonly<Record<string, readonly Stroke[]>> = {
  cup: [
    ink('M44 34 V84 C44 96 52 102 64 102 H88 C100 102 108 96 108 84 V34'),
    ink('M44 34 C44 26 108 26 108 34 C108 42 44 42 44 34 Z'),
    ink('M108 48 C130 44 134 78 106 82'),
    fine('M62 18 C58 12 66 10 62 4 M78 18 C74 12 82 10 78 4'),
  ],
  key: [
    ink('M54 60 A24 24 0 1 0 6 60 A24 24 0 1 0 54 60 Z'),
    fine('M40 60 A10 10 0 1 0 20 60 A10 10 0 1 0 40 60 Z'),
    ink('M53 54 H150 V66 H53 M118 66 V84 H128 V66 M136 66 V80 H146 V66'),
  ],
  bed: [
    ink('M12 28 V106 M148 56 V106 M12 92 H148 M12 72 H148'),
    ink('M18 72 V60 C18 54 22 52 28 52 H48 C54 52 56 56 56 62 V72'),
    ink('M56 72 V58 H128 C140 58 148 62 148 72'),
  ],
  door: [
    ink('M46 112 V8 H114 V112 M34 112 H126'),
    fine('M56 20 H104 V54 H56 Z M56 66 H104 V100 H56 Z'),
    solid('M97 62 A4 4 0 1 0 105 62 A4 4 0 1 0 97 62 Z'),
  ],
  lamp: [
    ink('M58 12 H102 L122 58 H38 Z'),
    ink('M80 58 V100 M54 108 C54 100 66 98 80 98 C94 98 106 100 106 108 Z'),
    fine('M98 58 V74 M30 70 L22 78 M130 70 L138 78'),
  ],
  chair: [
    ink('M50 8 L54 66 M98 8 L96 66 M51 20 H98 M52 38 H97'),
    ink('M54 66 H96 L112 78 H44 Z'),
    ink('M46 78 V112 M110 78 V112 M60 78 V100 M94 78 V100'),
  ],
};

/** Words that have a picture, in each language that has such a text. */
export const pictureOfWord: Readonly<Record<string, string>> = {
  cup: 'cup',
  key: 'key',
  bed: 'bed',
  door: 'door',
  lamp: 'lamp',
  chair: 'chair',
  taza: 'cup',
  llave: 'key',
  cama: 'bed',
  puerta: 'door',
  silla: 'chair',
  Tasse: 'cup',
  Schlüssel: 'key',
  Bett: 'bed',
  Tür: 'door',
  Stuhl: 'chair',
};
