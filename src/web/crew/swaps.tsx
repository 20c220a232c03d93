import type { Swap } from "../../../shared/claims.ts";
import { type Crew, titleOf, useCrew } from "./crew.ts";
import { answerSwap } from "./crew-service.ts";

/** Offers to trade, first those that wait for one's answer. */
export function Swaps() {
  const { board } = useCrew();
  const me = board.me?.member;
  const forMe = board.swaps.filter(({ to }) => to.member === me);
  const byMe = board.swaps.filter(({ from }) => from.member === me);
  if (forMe.length + byMe.length === 0) return null;
  return (
    <section aria-label="Swaps" class="swaps">
      {forMe.map((swap) => (
        <Offered key={swap.id} swap={swap} />
      ))}
      {byMe.map((swap) => (
        <Offering key={swap.id} swap={swap} />
      ))}
    </section>
  );
}

/** `train 12`, or the duty's name where the board shows it. */
function nameOf({ board }: Crew, { kind, code }: Swap["gives"]): string {
  const name = board.duties.find((duty) => duty.code === code)?.name ?? code;
  return kind === "train" ? `train ${code}` : titleOf(kind, code, name);
}

const ANSWERS = {
  accept: "The swap is made.",
  refuse: "The swap is refused; both keep what they have.",
  withdraw: "The offer is withdrawn.",
} as const;

function AnswerButton({ swap, answer, word }: AnswerButtonProps) {
  const { deeds, address } = useCrew();
  const at = { ...address, slot: swap.gives.slot };
  const press = () =>
    void deeds.run({
      name: `${answer} ${swap.id}`,
      deed: (key) => answerSwap(at, swap.id, answer, key),
      tell: () => ({ text: ANSWERS[answer] }),
    });
  return (
    <button type="button" class={answer === "accept" ? "main-button" : "big-button"} onClick={press}>
      {word}
    </button>
  );
}

interface AnswerButtonProps {
  readonly swap: Swap;
  readonly answer: keyof typeof ANSWERS;
  readonly word: string;
}

function Offered({ swap }: { readonly swap: Swap }) {
  const crew = useCrew();
  return (
    <div class="said">
      <p>
        <strong>
          {swap.from.name} offers you {nameOf(crew, swap.gives)} for your {nameOf(crew, swap.wants)}.
        </strong>{" "}
        {swap.message && `“${swap.message}”`}
      </p>
      <span class="crew-do">
        <AnswerButton swap={swap} answer="accept" word="Swap" />
        <AnswerButton swap={swap} answer="refuse" word="No, thank you" />
      </span>
    </div>
  );
}

function Offering({ swap }: { readonly swap: Swap }) {
  const crew = useCrew();
  return (
    <div class="said">
      <p>
        You offer {swap.to.name} your {nameOf(crew, swap.gives)} for {nameOf(crew, swap.wants)}.
      </p>
      <AnswerButton swap={swap} answer="withdraw" word="Withdraw" />
    </div>
  );
}
