/** Hands a file to the person, under a name. */
export function saveFile(name: string, content: BlobPart, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // the browser has taken it by the time the next task runs
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Dots of a picture to a millimetre of drawing: fine enough for print. */
const DOTS = 8;

/** A drawing as it stands on the page, in its colours, as dots. */
export async function savePng(name: string, svg: SVGSVGElement): Promise<void> {
  const { width, height } = svg.viewBox.baseVal;
  const image = new Image();
  const address = URL.createObjectURL(new Blob([asFile(svg)], { type: 'image/svg+xml' }));
  try {
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width * DOTS);
    canvas.height = Math.round(height * DOTS);
    canvas.getContext('2d')!.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
    if (blob) saveFile(name, blob, 'image/png');
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** The drawing with the page's colours written into it, so that it looks the same by itself. */
export function asFile(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const originals = svg.querySelectorAll<SVGElement>('*');
  copy.querySelectorAll<SVGElement>('*').forEach((element, k) => {
    const style = getComputedStyle(originals[k]!);
    if (element.matches('line,polyline,polygon,circle,path,rect,text,tspan')) {
      element.setAttribute('fill', style.fill);
      element.setAttribute('stroke', style.stroke);
    }
    element.removeAttribute('class');
  });
  copy.querySelector('[data-cursor]')?.remove();
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
}
