/**
 * The one home of what the user reads when something cannot be done: what happened, what is safe, what to do next.
 * `{detail}` takes the refusal's short fact.
 */
export const messages = {
  'unknown-request':
    'This window asked for something that Fairhand does not know. Nothing was changed. Restart Fairhand.',
  'malformed-request':
    'Something in this entry cannot be stored as it is ({detail}). Nothing was changed. Correct it and try again.',
  internal:
    'Something went wrong inside Fairhand. What was saved before is safe. Try again; if it happens again, restart Fairhand.',
  locked: 'The caseload is locked. Nothing was lost. Unlock it with your passphrase to go on.',
  'no-caseload': 'There is no caseload in this folder yet. Create one, open the demo, or restore a backup.',
  'caseload-exists':
    'There is a caseload in this folder already. It was left as it is. Unlock it, or choose another folder.',
  'wrong-passphrase':
    'This passphrase does not open the caseload. The caseload is unharmed. Check capital letters and the keyboard, then try again.',
  'wrong-recovery-key':
    'This recovery key does not open the caseload. The caseload is unharmed. Only the key of the newest sheet counts; one that was used or replaced opens nothing any more. Check the letters, then try again.',
  'wait-before-retry':
    'Several passphrases or keys were wrong. The caseload is unharmed. Wait {detail} seconds, then try again.',
  'passphrase-too-short':
    'This passphrase is too short to protect health records. Nothing was changed. Use at least 12 characters; a few unrelated words are easy to remember.',
  damaged:
    'The caseload file is damaged. It was not changed and will not be deleted. Restore the newest backup, or ask for help with the file.',
  'system-key-unusable':
    'The key store of this computer did not give the key. The caseload is unharmed. Type the passphrase; Settings can set the key store up again.',
  'key-file-missing':
    'The key file beside the caseload is missing or cannot be read. The caseload is unharmed but cannot be opened without it. Put the key file back or restore a backup.',
  'newer-version': 'This caseload was written by a newer Fairhand. It was not changed. Open it with that version.',
  'locked-by-another':
    'Another window of Fairhand has this caseload open. Nothing was changed. Use that window or close it first.',
  'folder-not-writable':
    'Fairhand cannot write into this folder. Nothing was changed. Choose another folder or ask for write permission.',
  'disk-full':
    'The disk is full. Everything saved before is safe; the last entry is still on the screen. Free some space, then try again.',
  'not-found':
    'This entry is not in the caseload any more. Nothing was changed. Go back to the caseload and open the client again.',
  'already-approved': 'This program was approved and is frozen. It was not changed. Start a new program from a copy.',
  'already-issued': 'This page was issued and is frozen. It was not changed. Make a new page instead.',
  'red-flag-open':
    'A red flag is open for this client. No program was approved. See the referral page; approve after the flag was reviewed.',
  'practice-not-safe':
    'This page shows practice that is not safe for this client now ({detail}). The page was not kept. Open it anew; what must not be done is left off.',
  'red-flags-not-asked':
    'The red-flag questions were not all answered. No program was approved. Ask them first; it takes about three minutes.',
  'veto-not-overridden':
    'A line in this program is unsafe for this client as recorded ({detail}). The program was not approved. Remove the line, or keep it and give your reason.',
  'nothing-to-undo':
    'Nothing was changed for this client since Fairhand was opened, so there is nothing to undo. The trail shows what was changed before.',
  'export-too-large':
    'These pages together are larger than {detail} MB, more than one such file should hold. Nothing was saved. Save it without the scans, or export the client as a file of Fairhand.',
  'handover-forked':
    'This hand-over and this caseload have different entries under the same number: one of the two folders was copied and both went on. Nothing was taken in, nothing was lost. Ask your colleague to restore her newest backup, which gives her laptop a name of its own, and to hand over again.',
  'handover-not-for-us':
    'This hand-over is locked for another key than yours. Nothing was taken in. Send your colleague your key again, and ask for a new hand-over.',
  'not-a-handover':
    'This file is not a hand-over of Fairhand, or it breaks off before its end. Nothing was taken in. Wait until it is copied whole, or ask for it again.',
  'handover-newer':
    'This hand-over was written by a newer Fairhand. Nothing was taken in. Install that version here, then take it in again.',
  'handover-older':
    'This hand-over was written by an older Fairhand in a way that is not read any more. Nothing was taken in. Ask your colleague to install this version and to hand over again.',
  'key-not-one':
    'This is not a key for hand-overs. Nothing was kept. Copy the whole line that begins with age1 from your colleague’s screen.',
  'key-is-secret':
    'This is a secret key, not the one to give away. It was not kept. Whoever sent it should make a new one; ask for the line that begins with age1.',
  'key-is-own':
    'This is the key of this caseload itself. Nothing was kept. Ask your colleague for hers; yours is the one to give away.',
  'share-gone':
    'The shared folder is not there now. Nothing was lost, and no half file was left. Connect to it and try again, or save the hand-over as a file.',
  'code-taken': 'Another client has this code already. Nothing was changed. Choose another code.',
  'co-sign-self':
    'You recorded this entry, so somebody else has to co-sign it. Nothing was changed, and the entry waits in Due. Ask the therapist who supervises you to sign in and to sign it.',
  'co-sign-assistant':
    'An assistant or student cannot co-sign. Nothing was changed, and the entry waits in Due. Ask the therapist to sign it.',
  'assistant-approves':
    'An assistant or student cannot approve a program. The draft is kept as it is. Ask the therapist to look at it and approve it.',
  'assistant-clears':
    'An assistant or student cannot clear a red flag. It stays open, and nothing was changed. Ask the therapist to review it now.',
  'assistant-evaluates':
    'An assistant or student cannot sign an evaluation. The page is kept as a draft. Ask the therapist to save or print it.',
  'assistant-manages':
    'An assistant or student cannot manage who signs in, nor make a recovery sheet. Nothing was changed. Ask the therapist to do it.',
  'assistant-erases':
    'An assistant or student cannot erase records nor move the caseload. Nothing was changed. Ask the therapist to do it.',
  'initials-missing':
    'Initials are missing. Nothing was changed. Several people use this caseload: type your initials too.',
  'initials-taken':
    'Somebody here has or had the initials {detail}. Nobody was added. Take others: the trail must tell the two apart.',
  'initials-unknown':
    'Nobody here signs in with the initials {detail}. Nothing was changed, and the recovery key can still be used. Check the initials, then try again.',
  'not-oneself':
    'Nobody takes their own sign-in or role away, so that a therapist is always left. Nothing was changed. Ask another therapist to do it.',
  'people-not-in-demo': 'The demo has one sign-in for everybody. Nothing was changed. Add people in your own caseload.',
  'people-too-many': 'There are {detail} people on the list, as many as one caseload holds. Nobody was added.',
  'sign-in-decides':
    'Initials and role come from the sign-in. Nothing was changed. Another therapist can change a role under Settings, People.',
  'date-in-future': 'This date lies in the future. Nothing was changed. Check the day, month and year.',
  'ink-empty':
    'No writing came from the pen. Nothing was kept. Check that the pen writes on this surface, then start again.',
  'ink-unreadable': '{detail} Nothing was added to the client. Choose another file.',
  'ink-known': 'This ink file is in this client already. Nothing was added. Choose another file.',
  'date-too-old': 'This date lies too far back to be right. Nothing was changed. Check the year.',
  'demo-not-ours':
    'The folder “demo” holds something that is not the demo of Fairhand. Nothing was deleted. Look into that folder yourself.',
  'passphrase-too-weak':
    'This passphrase is guessed too soon: common words or names, words of the clinic, repeats, a year, or letters in a row. Nothing was changed. Use four or five unrelated words.',
  'empty-file': 'This file is empty. Nothing was added. Scan or copy the page again.',
  'unreadable-file':
    'This file cannot be read as a picture or PDF. Nothing was added. Save the page as PNG, JPEG, TIFF or PDF and try again.',
  'not-an-image': 'This file is not a picture or PDF. Nothing was added. Choose a scan or photo of the page.',
  truncated: 'This picture breaks off before its end. Nothing was added. Copy or scan it again.',
  'too-large':
    'This picture is too large (over 100 million pixels, or over 200 MB). Nothing was added. Scan at 300 dpi.',
  'trial-open':
    'A trial of this client is not finished yet. It was left as it is. Decide it or stop it first, then begin another.',
  'no-new-text':
    'There is no sentence left that nobody has met within the year. Nothing was changed. Add frames or words under Rules, or take a shipped text.',
  'page-not-found': 'This PDF has no such page. Nothing was added. Choose another page.',
  'decode-timeout':
    'Reading this picture took too long and was stopped. Nothing was added. Save it as PNG or JPEG and try again.',
  'no-scale':
    'This page has no scale yet, so nothing can be measured in millimeters. The picture is kept. Give the scan’s dpi, or mark two points a known distance apart.',
  'scale-out-of-range': 'This scale cannot be right ({detail}). The picture is kept. Check the dpi or the distance.',
  'setup-impossible':
    'These heights do not fit together ({detail}). Nothing was computed. Measure again, in millimeters.',
  cancelled: 'Stopped as you asked. Nothing was changed.',
  'backup-failed':
    'The backup could not be finished. The caseload is safe and no half backup was left. Check the disk, then try again.',
  'backup-unverified':
    'The backup was written but did not read back the same. It was removed. The caseload is safe. Try another disk.',
  'backup-pictures-missing':
    'This is an automatic backup: it keeps its pictures in the folder “pictures” beside it, and that folder is missing or incomplete here. Nothing was restored. Give the path of the file where that folder lies, or choose a backup made by hand.',
  'not-a-backup':
    'This file is not a Fairhand backup, or it is damaged. The caseload was not changed. Choose another file.',
  'not-an-export':
    'This file is not a client exported from Fairhand, or it is damaged. Nothing was added. Choose another file.',
  'save-failed': 'The file could not be written. Nothing in the caseload was changed. Choose another place.',
  'print-failed': 'The page could not be printed. It is still here. Try again, or save it as PDF.',
  'not-due':
    'A chosen client is not on the list of records that are due. Nothing was erased. Look at the list again; a single client is erased in their own record.',
  'erase-not-confirmed':
    'The number typed is not the number of chosen clients. Nothing was erased. Count them, then type it again.',
  'not-moved':
    'This caseload was not moved to another laptop. Nothing was deleted. Write the file for the other laptop first.',
  'demo-missing': 'The demo caseload is not in this installation. Your own caseload is not affected.',
  'rule-table-refused': 'The change was refused: {detail}. The rule table in use stays as it is.',
} as const;

export type MessageCode = keyof typeof messages;

export const sentenceFor = (code: MessageCode, detail?: string): string =>
  (messages[code] as string).replace('{detail}', detail ?? 'see the entry');
