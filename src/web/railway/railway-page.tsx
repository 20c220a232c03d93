import { useLocation } from "preact-iso";
import type { District, Line, Link, Place, Section, Selector } from "../../../shared/layout.ts";
import { bothWaysAddress, railwayAddress, wiringAddress } from "../addresses.ts";
import { clubPath } from "../api/service.ts";
import { useEvents } from "../api/use-events.ts";
import { readAll } from "../nights/night-records.ts";
import { useCurrent } from "../nights/use-current.ts";
import { LAYOUT_TABLES } from "../records/layout-tables.ts";
import { TablePage } from "../records/table-page.tsx";
import { RailwayDrawing } from "./drawing.tsx";
import { FirstRecords } from "./first-records.tsx";
import { type Railway, sayRailway } from "./railway-state.ts";

interface RailwayPageProps {
  readonly club?: string;
  readonly table?: string;
}

async function readRailway(club: string, signal: AbortSignal): Promise<Railway> {
  const of = <T,>(kind: string) => readAll<T>(`${clubPath(club)}/${kind}`, signal);
  const [sections, links, places, districts, selectors, lines] = await Promise.all([
    of<Section>("sections"),
    of<Link>("links"),
    of<Place>("places"),
    of<District>("districts"),
    of<Selector>("selectors"),
    of<Line>("lines"),
  ]);
  return { sections, links, places, districts, selectors, lines };
}

const OF_RAILWAY = /^(area|place|section|link|district|supply|selector|controller|command-system|line)$/;

/** Places, sections, links and what feeds them: as a drawing from the records, and as tables edited in place. */
export function RailwayPage({ club = "", table }: RailwayPageProps) {
  const { query, route } = useLocation();
  const railway = useCurrent(club, (signal) => readRailway(club, signal));
  useEvents(club, { concerns: ({ kind }) => OF_RAILWAY.test(kind), refresh: railway.refresh });
  const shown = table ?? "sections";
  const { value } = railway;
  return (
    <TablePage
      club={club}
      heading="Railway"
      tables={LAYOUT_TABLES}
      table={shown}
      addressOf={(one) => railwayAddress(club, one)}
    >
      {value && (
        <>
          <p class="headline railway-answer">{sayRailway(value)}</p>
          <p class="answer-facts">
            <a href={wiringAddress(club)}>How the districts are wired</a>{" "}
            <a href={bothWaysAddress(club)}>What it would take all-analog and all-digital</a>
          </p>
          {value.sections.length === 0 && <FirstRecords club={club} />}
          {value.sections.length > 0 && (
            <RailwayDrawing
              railway={value}
              chosen={shown === "sections" ? (query.row ?? null) : null}
              onChosen={(code) =>
                route(`${railwayAddress(club, "sections")}?row=${encodeURIComponent(code)}`)
              }
            />
          )}
        </>
      )}
    </TablePage>
  );
}
