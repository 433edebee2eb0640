/** Version of the model of change; kept beside every stored or exported verdict. Raised when any answer changes. */
export const CHANGE_VERSION = 'change-1';
