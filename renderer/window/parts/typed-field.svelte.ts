/** What every typed-into field shares: it shows what is being typed, saves on a pause, and on leaving. */
import { isPause } from './typing-pause.ts';

type Typed = Event & { currentTarget: HTMLInputElement | HTMLTextAreaElement };

interface TypedField {
  /** What is stored, as the field shows it. */
  stored: () => string;
  /** 'typing': on a pause of half a second, when left, hidden, locked or closed. 'left': only when left. */
  saves: () => 'typing' | 'left' | 'nothing';
  /** Takes what was typed; `pause`: in the middle of typing, where half a number is no mistake yet. */
  take: (typed: string, pause: boolean) => void;
}

/** The attributes of the input: `<input {...field.attributes} />`. */
export function typedField({ stored, saves, take }: TypedField) {
  /** What is being typed stands while the saved value returns, in its own spelling. */
  let typing = $state<string | null>(null);
  return {
    get attributes() {
      return {
        value: typing ?? stored(),
        'data-pause': saves() === 'typing' ? '' : undefined,
        'data-left': saves() === 'left' ? '' : undefined,
        oninput: (event: Typed) => (typing = event.currentTarget.value),
        onblur: () => (typing = null),
        onchange: (event: Typed) => take(event.currentTarget.value, isPause(event)),
      };
    },
  };
}
