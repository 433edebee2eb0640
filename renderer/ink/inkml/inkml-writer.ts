import type { InkDocument, InkTrace } from '../ink-types.ts';

/** What goes into the file beside the ink itself. Nothing names a client. */
export interface InkmlHeader {
  /** Samples a second, as measured; null: not told. */
  rateHz: number | null;
}

const escaped = (text: string): string =>
  text
    .replaceAll(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');

/** Three decimals at most; InkML knows no exponents. */
const told = (value: number, decimals = 3): string => String(Number(value.toFixed(decimals)));

interface Column {
  name: string;
  about: string;
  values: (trace: InkTrace) => Float64Array | null;
  decimals: number;
}

function columnsOf(document: InkDocument): Column[] {
  const length = document.calibrated ? 'units="mm"' : 'units="dev"';
  const degrees = 'units="deg"';
  const force = document.forceIsShare ? 'min="0" max="1"' : '';
  const all: Column[] = [
    { name: 'X', about: length, values: ({ x }) => x, decimals: 3 },
    { name: 'Y', about: length, values: ({ y }) => y, decimals: 3 },
    { name: 'T', about: 'units="ms" respectTo="#start"', values: ({ t }) => t, decimals: 3 },
    { name: 'F', about: force, values: (trace) => trace.force, decimals: 5 },
    { name: 'OTx', about: degrees, values: ({ tiltX }) => tiltX, decimals: 2 },
    { name: 'OTy', about: degrees, values: ({ tiltY }) => tiltY, decimals: 2 },
    { name: 'OR', about: degrees, values: ({ rotation }) => rotation, decimals: 2 },
  ];
  const hasInk = document.traces.length > 0;
  return all.filter(({ name, values }) => name === 'X' || name === 'Y' || (hasInk && document.traces.some(values)));
}

function traceElement(trace: InkTrace, index: number, columns: readonly Column[]): string {
  const lists = columns.map((column) => ({ values: column.values(trace), decimals: column.decimals }));
  const samples = Array.from({ length: trace.x.length }, (_, i) =>
    lists
      .map(({ values, decimals }) => (values && !Number.isNaN(values[i]!) ? told(values[i]!, decimals) : '?'))
      .join(' '),
  );
  const type = trace.kind === 'down' ? 'penDown' : 'penUp';
  return `<trace xml:id="t${index}" type="${type}" contextRef="#pen">${samples.join(', ')}</trace>`;
}

const group = (kind: string, inside: readonly string[]): string =>
  `<traceGroup><annotation type="kind">${kind}</annotation>\n${inside.join('\n')}\n</traceGroup>`;

/** The ink, grouped by lines and words where that is known. */
function body(document: InkDocument, columns: readonly Column[]): string[] {
  const done = new Set<number>();
  const write = (index: number): string => {
    done.add(index);
    return traceElement(document.traces[index]!, index, columns);
  };
  const word = (traces: readonly number[]): string => group('word', traces.map(write));
  const wordOf = (index: number): readonly number[] | undefined =>
    document.words.find((traces) => traces.includes(index));
  const each = (index: number): string | null => {
    if (done.has(index)) return null;
    const whole = wordOf(index);
    return whole ? word(whole) : write(index);
  };
  const out: string[] = [];
  for (const index of document.traces.keys()) {
    if (done.has(index)) continue;
    const line = document.lines.find((traces) => traces.includes(index));
    const element = line
      ? group(
          'line',
          line.map(each).filter((one) => one !== null),
        )
      : each(index);
    if (element !== null) out.push(element);
  }
  return out;
}

/**
 * InkML (W3C 2011) of a recording: X and Y in mm to a micrometer (device units where there is no scale), T in ms,
 * pressure from 0 to 1, tilt and rotation in degrees; task and text as annotations.
 */
export function writeInkml(document: InkDocument, { rateHz }: InkmlHeader): string {
  const columns = columnsOf(document);
  const channels = columns
    .map(({ name, about }) => `<channel name="${name}" type="decimal"${about && ` ${about}`}/>`)
    .join('');
  const rate = rateHz === null ? '' : `<sampleRate uniform="false" value="${told(rateHz, 2)}"/>`;
  const annotation = (type: string, text: string | null): string[] =>
    text === null ? [] : [`<annotation type="${type}">${escaped(text)}</annotation>`];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<ink xmlns="http://www.w3.org/2003/InkML">',
    '<definitions>',
    `<timestamp xml:id="start" time="${told(document.startedAtMs ?? 0, 0)}"/>`,
    `<inkSource xml:id="device">${rate}<traceFormat>${channels}</traceFormat></inkSource>`,
    '<context xml:id="pen" inkSourceRef="#device" timestampRef="#start"/>',
    '</definitions>',
    ...annotation('task', document.task),
    ...annotation('text', document.text),
    ...body(document, columns),
    '</ink>',
    '',
  ].join('\n');
}
