import { flagsOf, programInput } from '../../renderer/logic/program/facts/from-record.ts';
import { checkProgram } from '../../renderer/logic/program/draft/vetoes.ts';
import { Refusal } from '../contract/envelope.ts';
import type { programRequests } from '../contract/program.ts';
import type { Handler } from './handler.ts';
import { clinicRules } from './clinic-rules.ts';
import { refuseFuture, saveFact } from './saving.ts';

export const programHandlers: { [N in keyof typeof programRequests]: Handler<N> } = {
  'program.save': (services, program) => {
    if (program.status !== 'draft') throw new Refusal('already-approved');
    return saveFact('program')(services, program);
  },

  'program.approve': (services, { id }) => {
    const caseload = services.need();
    if (services.therapist().assistant) throw new Refusal('assistant-approves');
    const stored = caseload.get('program', id);
    if (!stored) throw new Refusal('not-found');
    if (stored.status === 'approved') throw new Refusal('already-approved');
    const record = caseload.record(stored.clientId);
    const rules = clinicRules(services);
    const flags = flagsOf(record, rules);
    if (flags.open.length > 0) throw new Refusal('red-flag-open');
    if (flags.unasked.length > 0) throw new Refusal('red-flags-not-asked');
    const check = checkProgram(stored.lines, programInput(record, rules), rules);
    if (check.flags.length > 0) throw new Refusal('red-flag-open');
    const unsafe = check.lines.find((line) => !line.overridden);
    if (unsafe) throw new Refusal('veto-not-overridden', unsafe.title);
    const doing = services.doing();
    const { at: _at, by: _by, ...program } = stored;
    return caseload.put(
      'program',
      { ...program, status: 'approved', approvedAt: doing.at, approvedBy: doing.by },
      doing,
    );
  },

  'practice.save': (services, log) => {
    refuseFuture(services, log.date);
    return saveFact('practiceLog')(services, log);
  },
};
