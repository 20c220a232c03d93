import type { PictureSummary } from "../../../shared/pictures.ts";
import { useMay } from "../api/use-me.ts";
import { ForGood } from "../shell/for-good.tsx";
import { Refused } from "../shell/refused.tsx";
import { useSubmit } from "../shell/use-submit.ts";
import { pictureSource, removePicture, type Stock, sendPicture } from "./picture-service.ts";

interface PicturePartProps {
  readonly club: string;
  readonly stock: Stock;
  readonly code: string;
  readonly name: string;
  /** Null where it has none. */
  readonly picture: PictureSummary | null;
  readonly again: () => void;
}

/** What one of the stock looks like, and another picture for it. */
export function PicturePart({ club, stock, code, name, picture, again }: PicturePartProps) {
  const mayKeep = useMay(club, "keep-roster");
  const send = useSubmit<Blob | null>(async (file) => {
    if (file === null) await removePicture(club, stock, code);
    else await sendPicture(club, stock, code, file);
    again();
  });
  return (
    <figure class="stock-picture">
      {picture ? (
        <img src={pictureSource(club, stock, picture)} alt={`${code}, ${name}`} />
      ) : (
        <p class="stock-no-picture">No picture yet</p>
      )}
      {mayKeep && (
        <figcaption>
          <div class="field">
            <label for="stock-picture">{picture ? "Another picture" : "A picture"}</label>
            <p class="field-hint" id="stock-picture-hint">
              PNG, JPEG or WebP; a large one is made smaller. Place and time that a camera writes into it are
              taken out.
            </p>
            <input
              id="stock-picture"
              type="file"
              accept="image/png,image/jpeg,image/webp"
              aria-describedby="stock-picture-hint"
              onChange={(event) => {
                const [file] = event.currentTarget.files ?? [];
                if (file) void send.run(file);
              }}
            />
          </div>
          <p role="status">{send.isBusy && "Sending …"}</p>
          <Refused problem={send.problem} />
          {picture && (
            <ForGood
              word="Remove"
              what={`the picture of ${code}`}
              isBusy={send.isBusy}
              onSure={() => void send.run(null)}
            />
          )}
        </figcaption>
      )}
    </figure>
  );
}
