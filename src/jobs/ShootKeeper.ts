import type { Answer } from '../check/answer.ts';
import { Again } from '../check/Again.ts';
import { Checker } from '../check/Checker.ts';
import { type Doubt, doubtOf } from '../check/doubt.ts';
import { questions } from '../check/questions/index.generated.ts';
import { restsOn } from '../check/restsOn.ts';
import type { Fault, Outcome } from '../faults/Fault.ts';
import { type Edit, applyEdit } from '../shoot/edit/Edit.ts';
import { Ledger } from '../shoot/ledger/Ledger.ts';
import { readShoot } from '../shoot/read.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { writeShoot } from '../shoot/write.ts';
import { type AnswerLine, type Working, lineOf } from './answers.ts';
import { type ChangedEntry, changedEntries } from './changedEntries.ts';
import { nameOfPlace } from './nameOfPlace.ts';
import type { Studied } from './studyEach.ts';

/** What undo and redo would do, in words. */
export interface History {
  readonly undo?: string;
  readonly redo?: string;
}

/** What an edit changed: places of the shoot, and only the answers that are not what they were. */
export interface Change {
  readonly entries: readonly ChangedEntry[];
  readonly answers: readonly AnswerLine[];
  readonly gone: readonly string[];
  readonly history: History;
  readonly revision: number;
}

/** A shoot just opened, with every answer. */
export interface Opened {
  readonly shoot: Shoot;
  readonly answers: readonly AnswerLine[];
  readonly warnings: readonly Fault[];
  readonly revision: number;
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly Fault[] };

interface Done {
  readonly forward: Edit;
  readonly back: Edit;
  /** Edits of one drag have this in common, and are undone together. */
  readonly drag: string | undefined;
}

/** Owns the shoot: takes edits, keeps what undoes them, and tells which answers changed. */
export class ShootKeeper {
  #checker: Checker | undefined;
  /** Apart from the checker: it tries figures that are not in the shoot. */
  readonly #again = new Again();
  #shoot: Shoot | undefined;
  #sent = new Map<string, Answer>();
  #done: Done[] = [];
  #undone: Done[] = [];
  #revision = 0;
  #studiedOn: { readonly shoot: Shoot; readonly revision: number } | undefined;

  /** The shoot at hand. */
  get shoot(): Shoot {
    if (this.#shoot === undefined) throw new Error('No shoot is open.');
    return this.#shoot;
  }

  get checker(): Checker {
    if (this.#checker === undefined) throw new Error('No shoot is open.');
    return this.#checker;
  }

  get ledger(): Ledger {
    return this.checker.ledger;
  }

  open(text: string): Result<Opened> {
    return this.#take(readShoot(text));
  }

  /** Takes a shoot that was made here rather than read. */
  begin(shoot: Shoot): Result<Opened> {
    return this.open(writeShoot(shoot));
  }

  #take(read: Outcome<Shoot>): Result<Opened> {
    if (!read.ok) return read;
    this.#shoot = read.value;
    this.#checker = new Checker(read.value, questions);
    this.#sent = new Map();
    this.#done = [];
    this.#undone = [];
    this.#revision += 1;
    const { changed } = this.#changedAnswers();
    return { ok: true, value: { shoot: read.value, answers: changed, warnings: read.warnings, revision: this.#revision } };
  }

  /** Takes an edit. Those that come one after the other with the same `drag` are undone in one step. */
  edit(edit: Edit, drag?: string): Result<Change> {
    const edited = applyEdit(this.shoot, edit);
    if (!edited.ok) return edited;
    // An edit that changes nothing would be an undo that does nothing.
    if (edited.value.shoot === this.shoot) return { ok: true, value: this.#moveTo(this.shoot) };
    const last = this.#done.at(-1);
    if (drag !== undefined && last?.drag === drag && this.#undone.length === 0) {
      this.#done.pop();
      this.#done.push({ forward: { says: edit.says, patches: [...last.forward.patches, ...edit.patches] }, back: { says: edit.says, patches: [...edited.value.inverse.patches, ...last.back.patches] }, drag });
    } else this.#done.push({ forward: edit, back: edited.value.inverse, drag });
    this.#undone = [];
    return { ok: true, value: this.#moveTo(edited.value.shoot) };
  }

  undo(): Result<Change> {
    return this.#step(this.#done, this.#undone, 'back');
  }

  redo(): Result<Change> {
    return this.#step(this.#undone, this.#done, 'forward');
  }

  #step(from: Done[], to: Done[], way: 'back' | 'forward'): Result<Change> {
    const last = from.at(-1);
    if (last === undefined) return { ok: false, faults: [{ path: '', message: way === 'back' ? 'There is nothing to undo.' : 'There is nothing to redo.' }] };
    const edited = applyEdit(this.shoot, last[way]);
    if (!edited.ok) return edited;
    from.pop();
    to.push(way === 'back' ? { ...last, drag: undefined } : { forward: last.forward, back: edited.value.inverse, drag: undefined });
    return { ok: true, value: this.#moveTo(edited.value.shoot) };
  }

  /** What is to be studied, and the state of the shoot it is to be studied on: kept until `adopt` is told of the last of it. */
  study(): { readonly keys: readonly string[]; readonly shoot: Shoot; readonly revision: number } {
    this.#studiedOn = { shoot: this.shoot, revision: this.#revision };
    return { keys: this.pending(), ...this.#studiedOn };
  }

  /** Takes in an answer studied elsewhere, unless what it rests on has changed since. Says what that changed. */
  adopt(studied: Studied, revision: number): Change | undefined {
    if (this.#studiedOn?.revision !== revision) return undefined;
    const on = this.#studiedOn.shoot;
    const then = new Ledger(on);
    if (on !== this.shoot && studied.reads.some((path) => then.at(path) !== this.ledger.at(path))) return undefined;
    this.ledger.cell(`adopted|${studied.key}`, () => {
      for (const path of studied.reads) this.ledger.at(path);
      return studied.answer;
    });
    return this.#moveTo(this.shoot);
  }

  /** The file's text as it would be saved. */
  text(): string {
    return writeShoot(this.shoot);
  }

  /** Keys of the answers that wait to be studied. */
  pending(): string[] {
    return this.#answers().filter(({ verdict }) => verdict === 'pending').map(({ key }) => key);
  }

  working(key: string): Working | undefined {
    const answer = this.#answers().find((one) => one.key === key);
    if (answer === undefined) return undefined;
    const question = questions.find(({ id }) => id === answer.question);
    const held = this.ledger.isFresh(`adopted|${key}`) ? `adopted|${key}` : key;
    const rests = answer.verdict === 'pending' ? [] : restsOn(this.ledger, held).map((figure) => Object.assign({}, figure, nameOfPlace(this.shoot, figure.path)));
    return { answer, explains: question?.explains ?? '', kind: question?.kind ?? 'immediate', rests };
  }

  /** How far an immediate answer may be out, and which figure would turn it. */
  doubt(key: string): Doubt | undefined {
    const question = questions.find(({ id }) => key.startsWith(`${id}|`));
    return question?.kind === 'immediate' ? doubtOf(this.shoot, question, key, this.#again) : undefined;
  }

  #moveTo(next: Shoot): Change {
    const entries = changedEntries(this.shoot, next);
    if (next !== this.shoot) this.#revision += 1;
    this.#shoot = next;
    this.checker.update(next);
    const { changed, gone } = this.#changedAnswers();
    const undo = this.#done.at(-1)?.forward.says;
    const redo = this.#undone.at(-1)?.forward.says;
    return { entries, answers: changed, gone, history: { ...(undo === undefined ? {} : { undo }), ...(redo === undefined ? {} : { redo }) }, revision: this.#revision };
  }

  #answers(): Answer[] {
    return this.checker.answers().flatMap((answer) => (answer.verdict === 'pending' && this.ledger.isFresh(`adopted|${answer.key}`) ? (this.#adopted(answer.key) ?? []) : answer));
  }

  /** The answer adopted under a key, or nothing where it turned out not to arise. Only asked for while it is fresh. */
  #adopted(key: string): Answer | undefined {
    return this.ledger.cell<Answer | undefined>(`adopted|${key}`, () => { throw new Error('It was fresh.'); });
  }

  #changedAnswers(): { changed: AnswerLine[]; gone: string[] } {
    const now = new Map(this.#answers().map((answer) => [answer.key, answer]));
    const changed = [...now.values()].filter((answer) => !sameAs(this.#sent.get(answer.key), answer)).map(lineOf);
    const gone = [...this.#sent.keys()].filter((key) => !now.has(key));
    this.#sent = now;
    return { changed, gone };
  }
}

/** Answers are kept until something they read changes, so identity tells; those that wait to be studied are made anew each time. */
function sameAs(before: Answer | undefined, now: Answer): boolean {
  return before === now || (before?.verdict === 'pending' && now.verdict === 'pending');
}
