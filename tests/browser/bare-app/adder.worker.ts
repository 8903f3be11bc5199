import { add } from './arithmetic.ts';

self.onmessage = (e: MessageEvent<[number, number]>) => self.postMessage(add(...e.data));
