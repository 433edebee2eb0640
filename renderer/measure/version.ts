/** Version of the page method. Raise it when a change can move a value: results of different versions are not compared. */
export const METHOD_VERSION = 'page-9';
