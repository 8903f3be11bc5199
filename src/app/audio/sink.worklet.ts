/** Plays blocks in the order in which they come; says each time it has begun one. Without a block there is silence, which is counted. */
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
  abstract process(inputs: Float32Array[][], outputs: Float32Array[][]): boolean;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

class Sink extends AudioWorkletProcessor {
  private readonly waiting: Float32Array[] = [];
  private now: Float32Array | null = null;
  private at = 0;
  private source: MessagePort | null = null;
  private missed = 0;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<{ readonly source: MessagePort | null }>) => {
      this.source?.close();
      this.waiting.length = 0;
      this.now = null;
      this.source = data.source;
      if (!this.source) return;
      this.source.onmessage = (e: MessageEvent<Float32Array>) => this.waiting.push(e.data);
    };
  }

  override process(_: Float32Array[][], outputs: Float32Array[][]): boolean {
    const out = outputs[0]?.[0];
    if (!out) return true;
    for (let n = 0; n < out.length; n++) {
      if (!this.now || this.at === this.now.length) this.next();
      if (!this.now) {
        out.fill(0, n);
        if (this.source) this.miss();
        return true;
      }
      out[n] = this.now[this.at++]!;
    }
    return true;
  }

  private next(): void {
    this.now = this.waiting.shift() ?? null;
    this.at = 0;
    if (this.now) this.source?.postMessage(null);
  }

  /** Told about once a second, so that a page can say that the machine is too slow. */
  private miss(): void {
    this.missed++;
    if (this.missed % 375 === 1) this.port.postMessage({ missed: this.missed });
  }
}

registerProcessor('sink', Sink);
