const svgNs = 'http://www.w3.org/2000/svg';

/**
 * Puts a copy of the page's picture, with what is drawn over it, alone on the printed sheet until printing is over.
 * @param viewer holds one img and the svg drawn over it
 * @returns removes the copy
 */
export function pictureForPrint(viewer: HTMLElement): () => void {
  const image = viewer.querySelector('img');
  const drawn = viewer.querySelector('svg');
  if (!image || !drawn) return () => {};
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  const { width, height } = drawn.viewBox.baseVal;
  const scan = document.createElementNS(svgNs, 'image');
  for (const [name, value] of Object.entries({ href: image.src, width, height }))
    scan.setAttribute(name, String(value));
  copy.prepend(scan);
  Object.assign(copy.style, {
    position: 'static',
    display: 'block',
    width: '100%',
    height: 'auto',
    maxHeight: '270mm',
  });
  const root = document.createElement('div');
  // The print style sheet shows nothing but this (renderer/window/parts/sheet.css).
  root.className = 'print-root';
  root.style.padding = '10mm';
  root.append(copy);
  document.body.append(root);
  const remove = () => root.remove();
  window.addEventListener('afterprint', remove, { once: true });
  return remove;
}
