/** Which argument of a start is a file to offer: paths as each system has them (RFC 8089 for addresses of files). */
import { expect, test } from 'vitest';
import { handedAmong, handedFile } from '../../../electron/files/handed-file.ts';

test('a path, a relative name and the address that a file manager gives are the same file', () => {
  const file = { file: '/home/a/Month 3.fhbackup', name: 'Month 3.fhbackup', kind: 'backup' };
  expect(handedFile('/home/a/Month 3.fhbackup', '/')).toEqual(file);
  expect(handedFile('Month 3.fhbackup', '/home/a')).toEqual(file);
  expect(handedFile('file:///home/a/Month%203.fhbackup', '/')).toEqual(file);
  expect(handedFile('/home/a/J-12.FHCLIENT', '/')).toMatchObject({ kind: 'client' });
});

test('what is not Fairhand’s by its ending is no file to offer, and neither is what stands behind an option', () => {
  for (const other of ['/home/a/letter.pdf', '/home/a/any.tar', 'fhclient', '', 'file://elsewhere/x.fhclient']) {
    expect(handedFile(other, '/')).toBeNull();
  }
  expect(handedAmong(['--data', '/home/a/x.fhbackup', '--y.fhclient', '/home/a/z.fhclient'], '/')).toMatchObject({
    name: 'z.fhclient',
  });
  expect(handedAmong(['--data', '/home/a/x.fhbackup'], '/')).toBeNull();
});
