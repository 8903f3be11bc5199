import { double } from './arithmetic.ts';

// the compiler's libraries do not have the scope of an audio worklet
declare const registerProcessor: (name: string, processor: unknown) => void;
declare class AudioWorkletProcessor {}

class Doubler extends AudioWorkletProcessor {
  process([input]: Float32Array[][], [output]: Float32Array[][]): boolean {
    input?.[0]?.forEach((x, k) => {
      if (output?.[0]) output[0][k] = double(x);
    });
    return true;
  }
}
registerProcessor('doubler', Doubler);
