import type { ManifoldToplevel } from 'manifold-3d';
import type { Answer } from '../check/answer.ts';
import type { Asking } from '../check/Asking.ts';
import type { Ledger } from '../shoot/ledger/Ledger.ts';
import type { System } from '../units/print.ts';
import type { PaperSize } from './sheet/look.ts';
import type { Fonts } from './type/Fonts.ts';

/** A file that leaves the screen; its place in the bundle. */
export interface PaperFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** How papers are wanted, and what they are made with. Nothing else comes from outside: the same press gives the same bytes. */
export interface Press {
  readonly fonts: Fonts;
  readonly paper: PaperSize;
  readonly system: System;
  /** Year, month, day, printed on every page. */
  readonly date: string;
  /** The program that works solids, where it was loaded; without it no ring is printed. */
  readonly solids?: SolidsMaker | undefined;
}

/** Makes closed solids; see `ring/`. */
export type SolidsMaker = ManifoldToplevel;

/** Everything a paper reads. */
export interface Making {
  readonly press: Press;
  readonly ledger: Ledger;
  readonly asking: Asking;
  /** Every answer to the shoot. */
  readonly answers: readonly Answer[];
  readonly shoot: string;
  readonly revision: string;
}

export interface MakingOfSetup extends Making {
  readonly setup: string;
  readonly setupName: string;
  readonly glasses: readonly string[];
}

type Made = readonly PaperFile[] | Promise<readonly PaperFile[]>;

/** A kind of paper: one for the whole shoot, or one for each setup. */
export type PaperKind =
  | { readonly id: string; readonly says: string; readonly per: 'shoot'; readonly make: (making: Making) => Made }
  | { readonly id: string; readonly says: string; readonly per: 'setup'; readonly make: (making: MakingOfSetup) => Made };

/** Declares a kind of paper. Every file that exports one under its own name is found. */
export const paper = <const Kind extends PaperKind>(kind: Kind): Kind => kind;

const utf8 = new TextEncoder();
export const textFile = (path: string, text: string): PaperFile => ({ path, bytes: utf8.encode(text) });
