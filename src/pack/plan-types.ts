// The removal plan as the pack shows it: its order in names, its minutes, and what it avoided.

import type { Quantity, Working } from '../quantity/types.ts';

/** The removal plan as the pack shows it, with names beside ids. */
export type PlanView = {
  readonly order: readonly {
    readonly do: 'undo' | 'off' | 'aside';
    readonly id: string;
    readonly name: string;
    readonly way: string | null;
    readonly access: string | null;
    readonly tool: string | null;
    readonly place: string | null;
    readonly reason: string;
    /** Ids (joint or part) this element had to wait for: the arrows of the map. */
    readonly after: readonly string[];
  }[];
  readonly minutes: Quantity;
  readonly bound: Quantity;
  readonly proven: boolean;
  readonly gap: number;
  readonly orderProven: boolean;
  readonly avoided: { readonly joints: readonly string[]; readonly minutes: Quantity } | null;
  readonly used: readonly string[];
  readonly cautions: readonly string[];
  readonly working: Working;
};
