-- The trail: who changed what, when, from what to what.

-- CreateTable
CREATE TABLE "trail" (
    "seq" BIGSERIAL NOT NULL,
    "club_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "person_id" UUID,
    "kind" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "deed" TEXT NOT NULL,
    "session_code" TEXT,
    "slot_code" TEXT,
    "version_name" TEXT,
    "was" JSONB,
    "became" JSONB,
    "withheld" TEXT[],

    CONSTRAINT "trail_pkey" PRIMARY KEY ("seq")
);

-- CreateIndex
CREATE INDEX "trail_club_id_seq_idx" ON "trail"("club_id", "seq");

-- CreateIndex
CREATE INDEX "trail_club_id_kind_code_seq_idx" ON "trail"("club_id", "kind", "code", "seq");

-- CreateIndex
CREATE INDEX "trail_club_id_person_id_seq_idx" ON "trail"("club_id", "person_id", "seq");

-- AddForeignKey
ALTER TABLE "trail" ADD CONSTRAINT "trail_club_id_fkey" FOREIGN KEY ("club_id") REFERENCES "clubs"("id") ON DELETE CASCADE ON UPDATE CASCADE;

ALTER TABLE "trail" ADD CONSTRAINT "trail_deed_known" CHECK ("deed" IN ('made', 'changed', 'removed'));

-- Append-only. Two things pass: a person who leaves no name behind, and a club that goes with all it had. RF003 is our own
-- error code.
CREATE FUNCTION refuse_change_of_trail() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' AND NEW.person_id IS NULL AND to_jsonb(NEW) - 'person_id' = to_jsonb(OLD) - 'person_id' THEN
    RETURN NEW;
  END IF;
  IF TG_OP = 'DELETE' AND NOT EXISTS (SELECT FROM clubs WHERE id = OLD.club_id) THEN
    RETURN OLD;
  END IF;
  RAISE EXCEPTION 'the trail only grows' USING ERRCODE = 'RF003';
END $$;
CREATE TRIGGER "trail_only_grows" BEFORE UPDATE OR DELETE ON "trail" FOR EACH ROW EXECUTE FUNCTION refuse_change_of_trail();
CREATE TRIGGER "trail_is_not_emptied" BEFORE TRUNCATE ON "trail" FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_of_trail();

-- What of a row is worth telling: neither keys nor counts of changes.
CREATE FUNCTION trail_fields("row" jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
  SELECT coalesce(jsonb_object_agg(key, value), '{}') FROM jsonb_each("row")
  WHERE value <> 'null' AND key NOT IN ('id', 'version', 'created_at', 'updated_at') AND key NOT LIKE '%\_id'
$$;

-- How a row is named. `code_from` is the column that does, or: 'claimed', the train or duty that it is about; 'version', timetable
-- and number; 'night', its session; 'id'. Where that is gone in the same transaction the id has to do.
CREATE FUNCTION trail_code("row" jsonb, code_from text, session_code text) RETURNS text LANGUAGE plpgsql STABLE AS $$
DECLARE
  found_code text;
BEGIN
  CASE code_from
    WHEN 'claimed' THEN
      IF "row" ->> 'train_id' IS NOT NULL THEN
        SELECT code INTO found_code FROM trains WHERE id = ("row" ->> 'train_id')::uuid;
      ELSE
        SELECT code INTO found_code FROM duties WHERE id = ("row" ->> 'duty_id')::uuid;
      END IF;
    WHEN 'version' THEN found_code := ("row" ->> 'timetable_code') || ' ' || ("row" ->> 'number');
    WHEN 'night' THEN found_code := session_code;
    ELSE found_code := "row" ->> code_from;
  END CASE;
  RETURN coalesce(found_code, "row" ->> 'id', '?');
END $$;

-- Appends an entry, unless nothing that is told has changed. The club's lock is held from here to the end of the commit, and
-- no longer: so numbers are given in the order in which commits become visible, and who reads up to a number misses nothing
-- below it. A sequence is no row, so that no transaction loses against another for it.
CREATE FUNCTION append_to_trail(deed text, club uuid, args text[], "row" jsonb, was jsonb, became jsonb) RETURNS void LANGUAGE plpgsql AS $$
DECLARE
  kind text := args[1];
  hidden text[];
  night text;
  version_name text;
BEGIN
  SELECT array_agg(DISTINCT key) INTO hidden
  FROM (SELECT jsonb_object_keys(coalesce(was, '{}')) UNION SELECT jsonb_object_keys(coalesce(became, '{}'))) AS changed(key)
  WHERE key = ANY (args[3]::text[]) OR key ~ 'password|secret|token|hash';
  IF hidden IS NOT NULL THEN
    was := was - hidden;
    became := became - hidden;
  END IF;
  IF deed = 'changed' AND hidden IS NULL AND was = '{}' AND became = '{}' THEN
    RETURN;
  END IF;
  IF "row" ->> 'session_id' IS NOT NULL THEN
    SELECT code INTO night FROM sessions WHERE id = ("row" ->> 'session_id')::uuid;
  ELSIF kind = 'session' THEN
    night := "row" ->> 'code';
  ELSIF "row" ->> 'version_id' IS NOT NULL THEN
    SELECT timetable_code || ' ' || number INTO version_name FROM timetable_versions WHERE id = ("row" ->> 'version_id')::uuid;
  END IF;
  PERFORM pg_advisory_xact_lock(hashtextextended('trail ' || club, 0));
  -- a club that goes takes its trail along
  IF NOT EXISTS (SELECT FROM clubs WHERE id = club) THEN
    RETURN;
  END IF;
  INSERT INTO trail (club_id, at, person_id, kind, code, deed, session_code, slot_code, version_name, was, became, withheld)
  VALUES (club, clock_timestamp(), nullif(current_setting('foreman.person', true), '')::uuid, kind,
    trail_code("row", args[2], night), deed, night, "row" ->> 'slot_code', version_name, was, became, coalesce(hidden, '{}'));
  PERFORM pg_notify('trail', club::text);
END $$;

-- Parts of a record, the slots of a session, are told of with their record. They wait in a table of the connection's own
-- for the end of the transaction: other transactions can then neither see them nor lose against them.
CREATE FUNCTION open_trail_parts() RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  IF to_regclass('pg_temp.trail_parts') IS NULL THEN
    CREATE TEMP TABLE trail_parts (whole text, kind text, record_id uuid, part text, is_new boolean, rows jsonb) ON COMMIT DELETE ROWS;
    CREATE INDEX ON trail_parts (record_id);
    CREATE CONSTRAINT TRIGGER trail_parts_left AFTER INSERT ON trail_parts DEFERRABLE INITIALLY DEFERRED
      FOR EACH ROW EXECUTE FUNCTION write_trail_of_parts();
  END IF;
END $$;

-- Rows of parts by the record that they belong to.
CREATE FUNCTION trail_part(owner text, list jsonb[], OUT record_id uuid, OUT rows jsonb) RETURNS SETOF record LANGUAGE sql IMMUTABLE AS $$
  SELECT (r ->> owner)::uuid, jsonb_agg(jsonb_strip_nulls(r - ARRAY['club_id', owner])) FROM unnest(list) AS r GROUP BY r ->> owner
$$;

-- Arguments: table of the record, its kind, the part's column that names it, what the part is called. One statement each:
-- where the transaction no longer waits for its end, both sides of a change are told of together.
CREATE FUNCTION note_trail_parts() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM open_trail_parts();
  IF TG_OP = 'INSERT' THEN
    INSERT INTO trail_parts SELECT TG_ARGV[0], TG_ARGV[1], (p).record_id, TG_ARGV[3], true, (p).rows
    FROM (SELECT trail_part(TG_ARGV[2], array_agg(to_jsonb(n))) AS p FROM new_rows n) AS grouped;
  ELSIF TG_OP = 'DELETE' THEN
    INSERT INTO trail_parts SELECT TG_ARGV[0], TG_ARGV[1], (p).record_id, TG_ARGV[3], false, (p).rows
    FROM (SELECT trail_part(TG_ARGV[2], array_agg(to_jsonb(o))) AS p FROM old_rows o) AS grouped;
  ELSE
    INSERT INTO trail_parts SELECT TG_ARGV[0], TG_ARGV[1], (p).record_id, TG_ARGV[3], is_new, (p).rows
    FROM (SELECT false AS is_new, trail_part(TG_ARGV[2], array_agg(to_jsonb(o))) AS p FROM old_rows o
      UNION ALL SELECT true, trail_part(TG_ARGV[2], array_agg(to_jsonb(n))) FROM new_rows n) AS grouped;
  END IF;
  RETURN NULL;
END $$;

-- What became of a record's parts, without those that are as they were.
CREATE FUNCTION take_trail_parts(record uuid, OUT was jsonb, OUT became jsonb) LANGUAGE plpgsql AS $$
BEGIN
  was := '{}';
  became := '{}';
  IF to_regclass('pg_temp.trail_parts') IS NULL THEN
    RETURN;
  END IF;
  WITH taken AS (DELETE FROM trail_parts WHERE record_id = record RETURNING part, is_new, rows),
    each_one AS (SELECT t.part, t.is_new, p.value FROM taken t, jsonb_array_elements(t.rows) p),
    gone AS (SELECT part, value FROM each_one WHERE NOT is_new EXCEPT ALL SELECT part, value FROM each_one WHERE is_new),
    come AS (SELECT part, value FROM each_one WHERE is_new EXCEPT ALL SELECT part, value FROM each_one WHERE NOT is_new)
  SELECT
    coalesce((SELECT jsonb_object_agg(part, list) FROM (
      SELECT part, jsonb_agg(value ORDER BY (value ->> 'position')::int) AS list FROM gone GROUP BY part) AS g), '{}'),
    coalesce((SELECT jsonb_object_agg(part, list) FROM (
      SELECT part, jsonb_agg(value ORDER BY (value ->> 'position')::int) AS list FROM come GROUP BY part) AS c), '{}')
  INTO was, became;
END $$;

-- Arguments: kind, how it is named, columns whose content is withheld, whether it has parts.
CREATE FUNCTION write_trail() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  before jsonb := CASE WHEN TG_OP <> 'INSERT' THEN to_jsonb(OLD) END;
  after jsonb := CASE WHEN TG_OP <> 'DELETE' THEN to_jsonb(NEW) END;
  "row" jsonb := coalesce(after, before);
  was jsonb := CASE WHEN TG_OP <> 'INSERT' THEN trail_fields(before) END;
  became jsonb := CASE WHEN TG_OP <> 'DELETE' THEN trail_fields(after) END;
  parts record;
BEGIN
  IF TG_OP = 'UPDATE' THEN
    SELECT coalesce(jsonb_object_agg(b.key, b.value) FILTER (WHERE b.value IS DISTINCT FROM after -> b.key), '{}') INTO was
    FROM jsonb_each(was) b;
    SELECT coalesce(jsonb_object_agg(a.key, a.value) FILTER (WHERE a.value IS DISTINCT FROM before -> a.key), '{}') INTO became
    FROM jsonb_each(became) a;
  END IF;
  IF TG_ARGV[3]::boolean THEN
    parts := take_trail_parts(("row" ->> 'id')::uuid);
    was := was || parts.was;
    became := became || parts.became;
  END IF;
  PERFORM append_to_trail(CASE TG_OP WHEN 'INSERT' THEN 'made' WHEN 'UPDATE' THEN 'changed' ELSE 'removed' END,
    coalesce("row" ->> 'club_id', "row" ->> 'id')::uuid, ARRAY[TG_ARGV[0], TG_ARGV[1], TG_ARGV[2]], "row", was, became);
  RETURN NULL;
END $$;

-- For parts that changed and whose record told nothing after that.
CREATE FUNCTION write_trail_of_parts() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  "row" jsonb;
  parts record;
BEGIN
  IF NOT EXISTS (SELECT FROM trail_parts WHERE record_id = NEW.record_id) THEN
    RETURN NULL;
  END IF;
  EXECUTE format('SELECT to_jsonb(t) FROM %I t WHERE id = $1', NEW.whole) INTO "row" USING NEW.record_id;
  parts := take_trail_parts(NEW.record_id);
  IF "row" IS NOT NULL THEN
    PERFORM append_to_trail('changed', ("row" ->> 'club_id')::uuid, ARRAY[NEW.kind, 'code', '{}'], "row", parts.was, parts.became);
  END IF;
  RETURN NULL;
END $$;

-- From now on every change of the table's rows leaves an entry. The table needs a club_id, and an id where it has parts.
CREATE FUNCTION keep_trail(of_table text, kind text, code_from text DEFAULT 'code', withheld text[] DEFAULT '{}', has_parts boolean DEFAULT false)
RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('CREATE CONSTRAINT TRIGGER %I AFTER INSERT OR UPDATE OR DELETE ON %I DEFERRABLE INITIALLY DEFERRED
    FOR EACH ROW EXECUTE FUNCTION write_trail(%L, %L, %L, %L)', of_table || '_trail', of_table, kind, code_from, withheld, has_parts);
END $$;

CREATE FUNCTION keep_trail_of_parts(of_table text, whole text, kind text, owner text, part text) RETURNS void LANGUAGE plpgsql AS $$
DECLARE
  args text := format('note_trail_parts(%L, %L, %L, %L)', whole, kind, owner, part);
BEGIN
  EXECUTE format('CREATE TRIGGER %I AFTER INSERT ON %I REFERENCING NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION %s',
    of_table || '_trail_insert', of_table, args);
  EXECUTE format('CREATE TRIGGER %I AFTER UPDATE ON %I REFERENCING OLD TABLE AS old_rows NEW TABLE AS new_rows FOR EACH STATEMENT EXECUTE FUNCTION %s',
    of_table || '_trail_update', of_table, args);
  EXECUTE format('CREATE TRIGGER %I AFTER DELETE ON %I REFERENCING OLD TABLE AS old_rows FOR EACH STATEMENT EXECUTE FUNCTION %s',
    of_table || '_trail_delete', of_table, args);
END $$;

SELECT keep_trail('clubs', 'club');
SELECT keep_trail('areas', 'area');
SELECT keep_trail('places', 'place');
SELECT keep_trail('walks', 'walk');
SELECT keep_trail('lines', 'line', has_parts => true);
SELECT keep_trail_of_parts('line_stops', 'lines', 'line', 'line_id', 'stops');
SELECT keep_trail('sections', 'section');
SELECT keep_trail('links', 'link');
SELECT keep_trail('command_systems', 'command-system');
SELECT keep_trail('supplies', 'supply');
SELECT keep_trail('districts', 'district');
SELECT keep_trail('controllers', 'controller', has_parts => true);
SELECT keep_trail_of_parts('controller_outputs', 'controllers', 'controller', 'controller_id', 'outputs');
SELECT keep_trail('selectors', 'selector', has_parts => true);
SELECT keep_trail_of_parts('selector_outputs', 'selectors', 'selector', 'selector_id', 'outputs');
SELECT keep_trail('locomotives', 'locomotive', withheld => '{owner}');
SELECT keep_trail('decoders', 'decoder');
SELECT keep_trail('rakes', 'rake', withheld => '{owner}');
SELECT keep_trail('handsets', 'handset', withheld => '{owner}', has_parts => true);
SELECT keep_trail_of_parts('handset_places', 'handsets', 'handset', 'handset_id', 'places');
SELECT keep_trail('members', 'member', withheld => '{name,note}');
SELECT keep_trail('memberships', 'membership', 'member_code');
SELECT keep_trail('timetables', 'timetable');
SELECT keep_trail('timetable_versions', 'timetable-version', 'version');
SELECT keep_trail('trains', 'train', has_parts => true);
SELECT keep_trail_of_parts('path_entries', 'trains', 'train', 'train_id', 'path');
SELECT keep_trail_of_parts('train_locomotives', 'trains', 'train', 'train_id', 'motive_power');
SELECT keep_trail_of_parts('train_rakes', 'trains', 'train', 'train_id', 'rakes');
SELECT keep_trail('sessions', 'session', has_parts => true);
SELECT keep_trail_of_parts('session_areas', 'sessions', 'session', 'session_id', 'areas');
SELECT keep_trail_of_parts('slots', 'sessions', 'session', 'session_id', 'slots');
SELECT keep_trail('bookings', 'booking', 'night');
SELECT keep_trail('booking_attendees', 'attendee', 'member_code');
SELECT keep_trail('duties', 'duty');
SELECT keep_trail('claims', 'claim', 'claimed');
SELECT keep_trail('queue_places', 'queue', 'claimed');
SELECT keep_trail('swaps', 'swap', 'id', withheld => '{message}');
SELECT keep_trail('night_clock_changes', 'clock', 'slot_code');
SELECT keep_trail('night_attendances', 'attendance', 'member_code');
SELECT keep_trail('night_handsets', 'handset-desk', 'handset_code');
SELECT keep_trail('night_trains', 'train-state', 'train_code');
SELECT keep_trail('night_replacements', 'replacement', 'train_code');
SELECT keep_trail('night_trips', 'trip', 'district_code');
