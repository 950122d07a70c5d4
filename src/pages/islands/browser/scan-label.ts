interface Detector {
  detect(source: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}

type DetectorMaker = new (options: { formats: string[] }) => Detector;

/** How often the camera's picture is looked at, ms. */
const LOOK_EVERY_MS = 200;

/** What a label turned out to say: the trailer it links to, or a number written out. */
type Label = { readonly trailerId: string } | { readonly number: string };

/** Labels carry the address of their trailer's page; a yard's own may carry the bare number. */
function readLabel(text: string): Label {
  const trailerId = /\/(?:trailers|sheets)\/([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})/i.exec(text)?.[1];
  return trailerId === undefined ? { number: text.trim() } : { trailerId: trailerId.toLowerCase() };
}

/** Reads codes with the camera, where browser and phone can. Null where they cannot: the number is typed then. */
export function labelScanner(view: HTMLVideoElement): (() => Promise<Label | null>) | null {
  const { BarcodeDetector } = globalThis as unknown as { BarcodeDetector?: DetectorMaker };
  if (BarcodeDetector === undefined || navigator.mediaDevices === undefined) return null;
  const detector = new BarcodeDetector({ formats: ['qr_code'] });
  let scanning = false;
  return async () => {
    // Pressed once more, it stops.
    if (scanning) {
      scanning = false;
      return null;
    }
    scanning = true;
    const camera = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
    try {
      view.srcObject = camera;
      view.hidden = false;
      await view.play();
      while (scanning) {
        const [code] = await detector.detect(view);
        if (code !== undefined) return readLabel(code.rawValue);
        await new Promise((resolve) => setTimeout(resolve, LOOK_EVERY_MS));
      }
      return null;
    } finally {
      scanning = false;
      for (const track of camera.getTracks()) track.stop();
      view.srcObject = null;
      view.hidden = true;
    }
  };
}
