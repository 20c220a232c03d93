import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PICTURE_BYTES } from "../../../shared/pictures.ts";
import { cleanPicture } from "../../../src/features/pictures/clean-picture.ts";
import { makePerson, type TestPerson } from "../../support/people.ts";
import { testApp } from "../../support/test-app.ts";
import { makeClub } from "../example-club.ts";
import {
  baseJpeg,
  basePng,
  baseWebp,
  JPEG_FRAME,
  jpegSegment,
  pngChunk,
  webpChunk,
  withExif,
} from "./camera-pictures.ts";

let app: Awaited<ReturnType<typeof testApp>>;
let owner: TestPerson;
let member: TestPerson;
let stranger: TestPerson;
let own: string;
let of: string;

beforeAll(async () => {
  app = await testApp({ accounts: true });
  const founder = await makePerson(app);
  for (const code of ["north", "south"])
    await makeClub({ request: founder.agent as unknown as typeof app.request }, code);
  owner = await makePerson(app, { club: "north", roles: ["layout owner"] });
  member = await makePerson(app, { club: "north" });
  stranger = await makePerson(app, { club: "south", roles: ["secretary"] });
  const { body } = await owner.agent.get("/api/clubs/north/locomotives").expect(200);
  own = body.items[0].code;
  of = `/api/clubs/north/locomotives/${own}/picture`;
});
afterAll(() => app.close());

const put = (who: TestPerson, url: string, bytes: Buffer, type = "image/jpeg") =>
  who.agent.put(url).set("content-type", type).send(bytes);

describe("a picture of a locomotive", () => {
  it("is told apart by its bytes, never by its name, and comes back as what it is", async () => {
    for (const [bytes, type] of [
      [basePng(), "image/png"],
      [baseWebp(), "image/webp"],
      [baseJpeg(), "image/jpeg"],
    ] as const) {
      const { body } = await put(owner, of, bytes, "text/html").expect(200);
      expect(body).toMatchObject({ code: own, mediaType: type, sizeBytes: bytes.length });
      const { headers, body: read } = await member.agent.get(of).buffer(true).expect(200);
      expect(headers["content-type"]).toBe(type);
      expect(headers).toMatchObject({
        etag: `"${body.tag}"`,
        "x-content-type-options": "nosniff",
        "cache-control": expect.stringContaining("private"),
        "content-security-policy": expect.stringContaining("sandbox"),
      });
      expect(Buffer.compare(read, bytes)).toBe(0);
      await member.agent
        .get(of)
        .set("if-none-match", headers.etag as string)
        .expect(304);
    }
    const { body } = await member.agent.get("/api/clubs/north/pictures").expect(200);
    expect(body.locomotives.map(({ code }: { code: string }) => code)).toEqual([own]);
  });

  it("is refused where it is no picture, breaks off, is too large, or is of nothing", async () => {
    const script = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>');
    for (const wrong of [script, Buffer.from("GIF89a"), Buffer.alloc(0), basePng().subarray(0, 40)])
      expect((await put(owner, of, wrong, "image/png")).body.code).toBe("validation-failed");
    // laid out as a picture, with nothing to see in it
    const frameless = Buffer.concat([
      Buffer.from("ffd8", "hex"),
      jpegSegment(0xda, "scan"),
      Buffer.from("ffd9", "hex"),
    ]);
    const scanless = Buffer.concat([Buffer.from("ffd8", "hex"), JPEG_FRAME, Buffer.from("ffd9", "hex")]);
    const bare = Buffer.concat([basePng().subarray(0, 8), pngChunk("IEND", "")]);
    const flags = Buffer.concat([
      Buffer.from("RIFF\x16\0\0\0WEBP", "latin1"),
      webpChunk("VP8X", "0123456789"),
    ]);
    for (const empty of [Buffer.from("ffd8ffd9", "hex"), frameless, scanless, bare, flags])
      expect((await put(owner, of, empty)).body).toMatchObject({
        code: "validation-failed",
        detail: expect.stringContaining("there is none in it"),
      });
    await put(owner, of, Buffer.concat([basePng(), Buffer.alloc(PICTURE_BYTES)])).expect(413);
    await put(owner, "/api/clubs/north/locomotives/none/picture", basePng()).expect(404);
    await put(owner, "/api/clubs/north/rakes/none/picture", basePng()).expect(404);
  });

  it("is kept by those who keep the roster, and unknown to another club", async () => {
    await put(member, of, basePng()).expect(403);
    await member.agent.delete(of).expect(403);
    const there = await stranger.agent.get(of);
    const nowhere = await stranger.agent.get(of.replace("north", "nowhere"));
    expect([there.status, there.text]).toEqual([404, nowhere.text.replaceAll("nowhere", "north")]);
    // the same code in their own club has none
    await stranger.agent.get(of.replace("north", "south")).expect(404);
  });

  it("follows a rename, goes with its record, and leaves a trail without its bytes", async () => {
    const { version, updatedAt, ...record } = (
      await owner.agent.get(`/api/clubs/north/locomotives/${own}`).expect(200)
    ).body;
    const spare = { ...record, code: "spare" };
    await owner.agent.post("/api/clubs/north/locomotives").send(spare).expect(201);
    const at = (code: string) => `/api/clubs/north/locomotives/${code}`;
    const { body: kept } = await put(owner, `${at("spare")}/picture`, basePng()).expect(200);
    await owner.agent
      .put(at("spare"))
      .set("if-match", "*")
      .send({ ...spare, code: "renamed" })
      .expect(200);
    const { headers } = await member.agent.get(`${at("renamed")}/picture`).expect(200);
    expect(headers.etag).toBe(`"${kept.tag}"`);
    await member.agent.get(`${at("spare")}/picture`).expect(404);
    await owner.agent.delete(at("renamed")).set("if-match", "*").expect(204);
    expect(await app.prisma.locomotivePicture.count({ where: { locomotiveCode: "renamed" } })).toBe(0);
    const entries = await app.prisma.trailEntry.findMany({
      where: { kind: "locomotive-picture", code: { in: ["spare", "renamed"] } },
      orderBy: { seq: "asc" },
    });
    expect(entries.map(({ code, deed }) => `${code} ${deed}`)).toEqual([
      "spare made",
      "renamed changed",
      "renamed removed",
    ]);
    expect(entries.every(({ was, became }) => !JSON.stringify([was, became]).includes("bytes"))).toBe(true);
  });
});

describe("what a camera writes beside a picture", () => {
  const SECRET = "51.5N 0.1W, Pocketcam 3, 2027-03-20 19:42";

  it("is gone, and what shows the picture stays", () => {
    const texts = {
      png: basePng([pngChunk("tEXt", SECRET), pngChunk("eXIf", SECRET), pngChunk("iTXt", SECRET)]),
      webp: baseWebp([webpChunk("EXIF", SECRET), webpChunk("XMP ", SECRET)]),
      jpeg: baseJpeg([
        withExif(1, SECRET),
        jpegSegment(0xe1, `http://ns.adobe.com/xap/1.0/\0${SECRET}`),
        jpegSegment(0xe2, `MPF\0${SECRET}`),
        jpegSegment(0xed, `Photoshop 3.0\0${SECRET}`),
        jpegSegment(0xfe, SECRET),
      ]),
    };
    expect(cleanPicture(texts.png).bytes).toEqual(basePng());
    expect(cleanPicture(texts.webp).bytes).toEqual(baseWebp());
    expect(cleanPicture(texts.jpeg).bytes).toEqual(baseJpeg());
    const profile = baseJpeg([
      jpegSegment(0xe2, "ICC_PROFILE\0\x01\x01 colours"),
      jpegSegment(0xee, "Adobe..."),
    ]);
    expect(cleanPicture(profile).bytes).toEqual(profile);
  });

  it("is gone whatever it is called: what is not of the picture goes, known or not", () => {
    // credentials of where a picture comes from (C2PA), and chunks and markers of somebody's own
    expect(cleanPicture(basePng([pngChunk("caBX", SECRET), pngChunk("prVt", SECRET)])).bytes).toEqual(
      basePng(),
    );
    expect(cleanPicture(baseWebp([webpChunk("C2PA", SECRET), webpChunk("mine", SECRET)])).bytes).toEqual(
      baseWebp(),
    );
    const jpeg = baseJpeg([jpegSegment(0xeb, `JP${SECRET}`), jpegSegment(0xf0, SECRET)]);
    expect(cleanPicture(jpeg).bytes).toEqual(baseJpeg());
    // colours, transparency and frames stay
    const png = basePng([
      pngChunk("gAMA", "\0\0\xb1\x8f"),
      pngChunk("tRNS", "\0\0"),
      pngChunk("acTL", "12345678"),
    ]);
    expect(cleanPicture(png).bytes).toEqual(png);
    const frame = (more: Buffer[]) =>
      webpChunk("ANMF", Buffer.concat([Buffer.alloc(16), webpChunk("VP8L", "picture."), ...more]));
    expect(cleanPicture(baseWebp([frame([webpChunk("C2PA", SECRET)])])).bytes).toEqual(
      cleanPicture(baseWebp([frame([])])).bytes,
    );
  });

  it("takes the small copy out of a JFIF head, which may show what was cut off", () => {
    const whole = baseJpeg();
    const jfif = "JFIF\0\x01\x02\0\0\x01\0\x01";
    const copied = Buffer.concat([
      whole.subarray(0, 2),
      jpegSegment(0xe0, `${jfif}\x01\x01rgb`),
      whole.subarray(2 + 18),
    ]);
    expect(cleanPicture(copied).bytes).toEqual(whole);
  });

  it("leaves which way up it was held, and nothing else of Exif", () => {
    for (const little of [true, false])
      for (let orientation = 2; orientation <= 8; orientation++) {
        const { bytes } = cleanPicture(baseJpeg([withExif(orientation, SECRET, little)]));
        expect(bytes.toString("latin1")).not.toContain("Pocketcam");
        const at = bytes.indexOf("Exif\0\0", 0, "latin1") + 6;
        // one entry, Exif 0x0112, a short
        expect(bytes.readUInt16BE(at + 8)).toBe(1);
        expect(bytes.readUInt16BE(at + 10)).toBe(0x0112);
        expect(bytes.readUInt16BE(at + 18)).toBe(orientation);
        expect(cleanPicture(bytes).bytes).toEqual(bytes);
      }
  });

  it("behind its end is gone too", () => {
    for (const whole of [basePng(), baseWebp(), baseJpeg()])
      expect(cleanPicture(Buffer.concat([whole, Buffer.from(SECRET)])).bytes).toEqual(whole);
  });

  it("whatever the bytes are, they are cleaned or refused in words, and cleaning twice changes nothing", () => {
    const whole = fc.constantFrom(
      basePng([pngChunk("tEXt", SECRET)]),
      baseWebp(),
      baseJpeg([withExif(6, SECRET)]),
    );
    const spoilt = fc
      .tuple(whole, fc.array(fc.tuple(fc.nat(200), fc.nat(255)), { maxLength: 6 }), fc.nat(300))
      .map(([bytes, changes, length]) => {
        const copy = Buffer.from(bytes.subarray(0, Math.max(1, Math.min(bytes.length, length))));
        for (const [at, value] of changes) if (at < copy.length) copy[at] = value;
        return copy;
      });
    fc.assert(
      fc.property(spoilt, (bytes) => {
        let cleaned: Buffer;
        try {
          cleaned = cleanPicture(bytes).bytes;
        } catch (error) {
          expect((error as { code?: string }).code).toBe("validation-failed");
          return;
        }
        expect(cleaned.length).toBeLessThanOrEqual(bytes.length + 100);
        expect(cleanPicture(cleaned).bytes).toEqual(cleaned);
      }),
      { numRuns: 400 },
    );
  });
});
