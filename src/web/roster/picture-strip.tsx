import type { PictureSummary } from "../../../shared/pictures.ts";
import { stockAddress } from "../addresses.ts";
import { pictureSource, type Stock } from "./picture-service.ts";

interface PictureStripProps {
  readonly club: string;
  readonly stock: Stock;
  readonly pictures: readonly PictureSummary[];
}

/** What of the stock has a picture, each leading to its page. */
export function PictureStrip({ club, stock, pictures }: PictureStripProps) {
  if (pictures.length === 0) return null;
  return (
    <ul class="picture-strip" aria-label={`Pictures of ${stock}`}>
      {pictures.map((picture) => (
        <li key={picture.code}>
          <a href={stockAddress(club, stock, picture.code)}>
            <img src={pictureSource(club, stock, picture)} alt="" loading="lazy" />
            {picture.code}
          </a>
        </li>
      ))}
    </ul>
  );
}
