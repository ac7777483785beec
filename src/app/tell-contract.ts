/** What the screen may know and ask of telling the leader. Fetched when somebody wants to tell. */
import type { StoreApi } from 'zustand/vanilla';
import type { AnswerProblem } from '../domain/exchange/problem.ts';
import type { Response } from '../domain/exchange/response.ts';
import type { Telling } from '../domain/exchange/tell.ts';
import type { Told } from '../domain/log/person.ts';
import type { Result } from '../domain/result.ts';
import type { Code } from './exchange-contract.ts';

export type { AnswerProblem, Response, Telling };

/** What this phone knows of a person in one programme; the secret stays behind. */
export interface TellingPerson {
  readonly name: string;
  readonly under16: boolean;
  /** Oldest first. */
  readonly told: readonly Told[];
}

/** What the person says of themselves. Kept on this phone, also when no name goes along. */
export type Introduction = Pick<TellingPerson, 'name' | 'under16'>;

/** Why an answer cannot be sealed: the programme names no key, or nobody signed it. */
export type PlainReason = 'no-key' | 'unsigned';

/** An answer that is ready. Nothing has been sent: that is done by the person, by one of its ways. */
export interface Answer {
  readonly programmeId: string;
  /** Ids of the log entries in it. */
  readonly ids: readonly string[];
  /** Exactly what is in it. */
  readonly response: Response;
  /** Nothing: it is sealed. Otherwise whoever sees it can read it. */
  readonly plain?: PlainReason;
  /** Short enough for a chat; of a sealed one, words and the link. */
  readonly message: string;
  /** For a file; its first line says in words what it is. */
  readonly text: string;
  readonly fileName: string;
  /** Only of a sealed one. */
  readonly link?: string;
  readonly linkIsLocal: boolean;
  /** "Part 1 of 2" and so on when there are several; empty when it is too long for codes. */
  readonly codes: readonly Code[];
}

/** Telling the leader, as the screens see it. */
export interface TellState {
  /** By the id under which the phone keeps the programme. */
  readonly people: Readonly<Record<string, TellingPerson>>;
  /** The share sheet takes words, not only files. */
  readonly canShareWords: boolean;
  /** Reads what is known of the person; safe to call again. */
  load(): Promise<Result<void, AnswerProblem>>;
  /**
   * Makes an answer of what was chosen. Keeps the introduction and, the first time, a secret made
   * for this programme. Sends nothing.
   */
  prepare(
    programmeId: string,
    telling: Telling,
    introduction: Introduction,
  ): Promise<Result<Answer, AnswerProblem>>;
  /** Notes that an answer was handed on, and when. The same answer again is noted once. */
  noteTold(answer: Answer): Promise<Result<void, AnswerProblem>>;
  /** It was not handed on after all. */
  takeBack(answer: Answer): Promise<Result<void, AnswerProblem>>;
  /** Through the share sheet, or saved: the `.txt` of an answer. */
  give(answer: Answer): Promise<void>;
  /** Through the share sheet. @returns whether it was handed on */
  shareWords(text: string): Promise<boolean>;
}

/** The store of it. */
export type TellStore = StoreApi<TellState>;
