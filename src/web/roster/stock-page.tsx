import { useEffect } from "preact/hooks";
import type { Estimates } from "../../../shared/estimates.ts";
import type { PictureList } from "../../../shared/pictures.ts";
import type { Decoder, Locomotive, Rake } from "../../../shared/roster.ts";
import { readingsAddress, rosterAddress } from "../addresses.ts";
import { read } from "../api/ask.ts";
import { clubPath, readClub } from "../api/service.ts";
import { useLoad } from "../api/use-load.ts";
import { readAll } from "../nights/night-records.ts";
import { sayRead, sayUsed } from "../readings/say-estimate.ts";
import { clubName } from "../shell/club-name.ts";
import { Loaded } from "../shell/loaded.tsx";
import { NotFoundPage } from "../shell/not-found-page.tsx";
import { Page } from "../shell/page.tsx";
import { Section } from "../shell/section.tsx";
import { decoderSettings } from "./decoder-settings.ts";
import { PicturePart } from "./picture-part.tsx";
import type { Stock } from "./picture-service.ts";
import { type Draw, drawsOf, drawsOfRake, sayLocomotive, sayRake } from "./say-one.ts";

interface Shown {
  readonly club: string;
  readonly name: string;
  readonly answer: string;
  readonly lengthMm: number;
  readonly owner: string;
  readonly note: string;
  readonly draws: readonly Draw[];
  readonly decoder: Decoder | null;
  readonly pictures: PictureList;
}

async function readStock(club: string, stock: Stock, code: string, signal: AbortSignal): Promise<Shown> {
  const at = `${clubPath(club)}/${stock}/${encodeURIComponent(code)}`;
  const [{ name }, pictures] = await Promise.all([
    readClub(club, signal),
    read<PictureList>(`${clubPath(club)}/pictures`, signal),
  ]);
  if (stock === "rakes") {
    const rake = await read<Rake>(at, signal);
    return { ...rake, club: name, answer: sayRake(rake), draws: drawsOfRake(rake), decoder: null, pictures };
  }
  const [locomotive, decoders, estimates] = await Promise.all([
    read<Locomotive>(at, signal),
    readAll<Decoder>(`${clubPath(club)}/decoders`, signal),
    read<Estimates>(`${clubPath(club)}/estimates`, signal),
  ]);
  const decoder = decoders.find((one) => one.locomotive === code) ?? null;
  const answer = sayLocomotive(locomotive, decoder);
  const draws = drawsOf(
    locomotive,
    estimates.items.filter((row) => row.locomotive === code),
  );
  return { ...locomotive, club: name, answer, draws, decoder, pictures };
}

interface StockPageProps {
  readonly club?: string;
  readonly table?: string;
  readonly code?: string;
}

/** One locomotive or rake: what it looks like, what it draws, and what its decoder has to be set to. */
export function StockPage({ club = "", table = "", code = "" }: StockPageProps) {
  if (table !== "locomotives" && table !== "rakes") return <NotFoundPage />;
  return <OneOfStock key={`${table} ${code}`} club={club} stock={table} code={code} />;
}

function OneOfStock({ club, stock, code }: { club: string; stock: Stock; code: string }) {
  const load = useLoad(`${club} ${stock} ${code}`, (signal) => readStock(club, stock, code, signal));
  const shown = load.status === "ready" ? load.value : null;
  useEffect(() => {
    if (shown) clubName.value = shown.club;
  }, [shown]);
  const row = `${rosterAddress(club, stock)}?row=${encodeURIComponent(code)}`;
  return (
    <Page
      title={`${code} · ${shown?.club ?? club}`}
      heading={shown ? `${code}, ${shown.name}` : code}
      class="stock-page"
    >
      <Loaded load={load} what={`Looking up ${code}`}>
        {(value, again) => (
          <>
            <p class="headline railway-answer">{value.answer}</p>
            <p class="answer-facts">
              <a href={row}>Change it in the table</a>
            </p>
            <PicturePart
              club={club}
              stock={stock}
              code={code}
              name={value.name}
              picture={value.pictures[stock].find((picture) => picture.code === code) ?? null}
              again={again}
            />
            <Draws club={club} draws={value.draws} />
            {value.decoder && <DecoderPart decoder={value.decoder} />}
            <Section heading={`${value.lengthMm} mm long${value.owner === "" ? "" : `, of ${value.owner}`}`}>
              <p>{value.note === "" ? "Nothing is noted of it." : value.note}</p>
            </Section>
          </>
        )}
      </Loaded>
    </Page>
  );
}

function Draws({ club, draws }: { readonly club: string; readonly draws: readonly Draw[] }) {
  const most = Math.max(...draws.map(({ ma }) => ma));
  const isRead = draws.some(({ estimate }) => estimate !== null);
  return (
    <Section
      heading={`It draws up to ${most} mA`}
      about="A measured figure beats one from a leaflet, and that a rule of thumb; what meters showed beats them all."
    >
      <section
        class="wide-frame"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone is scrolled with the keyboard
        tabIndex={0}
        aria-label="What it draws"
      >
        <table class="records">
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col" class="figure">
                mA
              </th>
              <th scope="col">Figure from</th>
              {isRead && (
                <>
                  <th scope="col">Meters showed</th>
                  <th scope="col">Checks use</th>
                </>
              )}
            </tr>
          </thead>
          <tbody>
            {draws.map(({ when, ma, source, estimate }) => (
              <tr key={when}>
                <th scope="row">{when}</th>
                <td class="figure">{ma}</td>
                <td>{source}</td>
                {estimate && (
                  <>
                    <td>{sayRead(estimate)}</td>
                    <td>{sayUsed(estimate)}</td>
                  </>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {isRead && (
        <p>
          <a href={readingsAddress(club)}>Record a reading</a>
        </p>
      )}
    </Section>
  );
}

function DecoderPart({ decoder }: { readonly decoder: Decoder }) {
  return (
    <Section
      heading={`Decoder ${decoder.code} answers to ${decoder.address}`}
      about="What its variables hold, as NMRA S-9.2.2 lays them out: forward, without a speed table of its own. Its maker's sheet has the last word."
    >
      <table class="records">
        <thead>
          <tr>
            <th scope="col">Variable</th>
            <th scope="col" class="figure">
              Value
            </th>
            <th scope="col">Says</th>
          </tr>
        </thead>
        <tbody>
          {decoderSettings(decoder).map(({ variable, value, words }) => (
            <tr key={variable}>
              <th scope="row">{variable}</th>
              <td class="figure">{value}</td>
              <td>{words}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Section>
  );
}
