import type { Detail } from '../programme/problem.ts';

/** From more to less. Advice never moves towards the front when a session felt harder. */
export const ACTIONS = ['step-up', 'go-on', 'repeat', 'ease', 'rest', 'stop'] as const;
/** What advice comes to, from the mildest to the gravest. */
export type Action = (typeof ACTIONS)[number];

/** What was seen in the log, and what each leads to. */
export const LEADS_TO = {
  /** A stop sign was felt, and nobody has said since that a doctor agreed. */
  'warning-sign': 'stop',
  /** The same niggle twice in 14 days, and it changed how they move; or three times. */
  'niggle-back': 'stop',
  /** The same twice, noticed only. */
  'niggle-twice': 'rest',
  /** A niggle that made them stop, in these days. */
  'niggle-stopped': 'rest',
  'hard-days': 'rest',
  paused: 'rest',
  /** The same niggle twice, and the days of rest are over. */
  'niggle-eased': 'ease',
  /** A niggle that changed how they move, lately. */
  'niggle-moved': 'ease',
  'much-harder': 'ease',
  /** Repeated already, and still harder than meant. */
  'still-harder': 'ease',
  'still-cut-short': 'ease',
  harder: 'repeat',
  'cut-short': 'repeat',
  /** Days away that put them back by a week or more. */
  away: 'repeat',
  'thin-week': 'repeat',
  through: 'go-on',
  starting: 'go-on',
  /** One session alone was harder. */
  'one-harder': 'go-on',
  /** Easier than meant, but nothing harder is within reach, or it is too late for it. */
  'easier-but': 'go-on',
  'as-meant': 'go-on',
  /** Too few sessions were rated to say more. */
  'few-rated': 'go-on',
  easier: 'step-up',
} as const satisfies Readonly<Record<string, Action>>;

/** What can be seen in a log. */
export type FindingCode = keyof typeof LEADS_TO;
/** All of them, in the order of the table above. */
export const FINDINGS = Object.keys(LEADS_TO) as readonly FindingCode[];

/** Something seen in the log, with its numbers. */
export interface Finding {
  readonly code: FindingCode;
  readonly detail: Detail;
}

/** A finding with its numbers. */
export const finding = (code: FindingCode, detail: Detail = {}): Finding => ({ code, detail });

/** How grave what a finding leads to is: 0 is the mildest. */
export const severityOf = (code: FindingCode): number => ACTIONS.indexOf(LEADS_TO[code]);
