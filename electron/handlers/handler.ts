import type { Input, Output, RequestName } from '../contract/index.ts';
import type { Services } from './services.ts';

/** Serves one request: input already checked, answer checked afterwards. Refuses by throwing Refusal or CaseloadError. */
export type Handler<N extends RequestName> = (services: Services, input: Input<N>) => Output<N> | Promise<Output<N>>;
