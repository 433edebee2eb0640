/** Which part of Settings is shown: it outlives the lock that a change of the key makes. */
export const settings = $state({ part: 'settings' as 'settings' | 'people' });
