/** The screens of an open client. */
export type Tab = 'client' | 'intake' | 'sample' | 'readback' | 'program' | 'goals' | 'progress' | 'pages';
