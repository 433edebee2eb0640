/** Asks the model once for each past visit, away from the window. */
import { pastVerdicts, type PastQuestion } from '../../logic/progress/past-verdicts.ts';

self.onmessage = ({ data }: MessageEvent<PastQuestion>): void => self.postMessage(pastVerdicts(data));
