/** The roles on the server that belong to one clinic's database; a cluster may hold several such. */
export interface Roles {
	/** owns all of it, logs in nowhere; what it may do is done by functions with fixed bodies */
	owner: string
	/** all PCs that are admitted */
	pc: string
	/** whoever holds an invitation that is open */
	guest: string
	/** six hexadecimal digits, in the name of every role */
	tag: string
}
export const rolesOf = (tag: string): Roles => ({
	owner: `lastwright_${tag}_owner`,
	pc: `lastwright_${tag}_pc`,
	guest: `lastwright_${tag}_guest`,
	tag,
})
/** In front of each function that acts with the owner's rights: nobody else's table or function is meant. */
const asOwner = 'SECURITY DEFINER SET search_path = pg_catalog, pg_temp'

/** What the server's own refusals are known by; the words for people stand in `faults.table.ts`. */
const refusals = {
	notAdmitted: 'LW001',
	wrongWord: 'LW002',
	invitationEnded: 'LW003',
	nameTaken: 'LW004',
	unknownPc: 'LW005',
	badForm: 'LW006',
	tooMany: 'LW007',
	neverChanged: 'LW008',
} as const
const refuse = (what: keyof typeof refusals, says: string): string => `RAISE EXCEPTION '${says}' USING ERRCODE = '${refusals[what]}'`

/** Tables: what the server holds. Of a record it sees who wrote it, how long it is and when it came. */
const tables = ({ owner, pc, guest, tag }: Roles): string => `
CREATE SCHEMA lastwright AUTHORIZATION ${owner};
SET LOCAL ROLE ${owner};
CREATE ROLE ${pc} NOLOGIN;
CREATE ROLE ${guest} NOLOGIN;
GRANT USAGE ON SCHEMA lastwright TO ${pc}, ${guest};
CREATE TABLE lastwright.meta (
	one boolean PRIMARY KEY DEFAULT true CHECK (one),
	tag text NOT NULL,
	generation uuid NOT NULL DEFAULT gen_random_uuid(),
	step int NOT NULL,
	least_client int NOT NULL,
	-- SHA-256 of a word that stands, sealed, in the clinic's records: a credential alone neither invites nor revokes
	word bytea CHECK (octet_length(word) = 32));
INSERT INTO lastwright.meta (tag, step, least_client) VALUES ('${tag}', 0, 1);
CREATE TABLE lastwright.pc (
	login name PRIMARY KEY,
	origin text NOT NULL UNIQUE CHECK (origin ~ '^[0-9a-f]{12}$'),
	sign_public bytea NOT NULL CHECK (octet_length(sign_public) = 44),
	box_public bytea NOT NULL CHECK (octet_length(box_public) = 44),
	admitted timestamptz NOT NULL DEFAULT clock_timestamp(),
	admitted_by text NOT NULL,
	seen timestamptz,
	seen_position bigint NOT NULL DEFAULT 0,
	revoked timestamptz,
	revoked_by text);
CREATE TABLE lastwright.guest (
	login name PRIMARY KEY,
	made timestamptz NOT NULL DEFAULT clock_timestamp(),
	until timestamptz NOT NULL,
	invited_by text NOT NULL,
	state text NOT NULL DEFAULT 'open' CHECK (state IN ('open', 'waiting', 'admitted', 'refused')),
	origin text,
	sign_public bytea,
	box_public bytea,
	verifier text);
-- only one transaction at a time gives out positions, from its first row to the end of its commit: so positions follow the order of commits
CREATE TABLE lastwright.turn (one int);
CREATE TABLE lastwright.record (
	position bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
	id uuid NOT NULL UNIQUE,
	origin text NOT NULL,
	-- 1, 2, 3 ... of that installation: a gap is a loss
	number bigint NOT NULL CHECK (number > 0),
	came timestamptz NOT NULL DEFAULT clock_timestamp(),
	sealed bytea NOT NULL CHECK (octet_length(sealed) BETWEEN 28 AND 67108864),
	UNIQUE (origin, number));
ALTER TABLE lastwright.record ALTER sealed SET STORAGE EXTERNAL;
-- the data key, once for each PC and change of the key
CREATE TABLE lastwright.keybox (
	epoch int NOT NULL CHECK (epoch > 0),
	origin text NOT NULL,
	made_by text NOT NULL,
	sealed bytea NOT NULL CHECK (octet_length(sealed) BETWEEN 28 AND 65536),
	PRIMARY KEY (epoch, origin, made_by));
ALTER TABLE lastwright.meta ENABLE ROW LEVEL SECURITY;
ALTER TABLE lastwright.pc ENABLE ROW LEVEL SECURITY;
ALTER TABLE lastwright.guest ENABLE ROW LEVEL SECURITY;
ALTER TABLE lastwright.turn ENABLE ROW LEVEL SECURITY;
ALTER TABLE lastwright.record ENABLE ROW LEVEL SECURITY;
ALTER TABLE lastwright.keybox ENABLE ROW LEVEL SECURITY;`

/** What happens at each push, whoever pushes. */
const triggers = `
CREATE FUNCTION lastwright.take_turn() RETURNS trigger LANGUAGE plpgsql ${asOwner} AS $$
BEGIN LOCK TABLE lastwright.turn IN EXCLUSIVE MODE; RETURN NULL; END $$;
CREATE TRIGGER a_turn BEFORE INSERT ON lastwright.record FOR EACH STATEMENT EXECUTE FUNCTION lastwright.take_turn();
CREATE FUNCTION lastwright.tell() RETURNS trigger LANGUAGE plpgsql ${asOwner} AS $$
BEGIN NOTIFY lastwright; RETURN NULL; END $$;
CREATE TRIGGER b_tell AFTER INSERT ON lastwright.record FOR EACH STATEMENT EXECUTE FUNCTION lastwright.tell();
CREATE FUNCTION lastwright.never() RETURNS trigger LANGUAGE plpgsql ${asOwner} AS $$
BEGIN ${refuse('neverChanged', 'a record is never changed or deleted')}; END $$;
CREATE TRIGGER stays BEFORE UPDATE OR DELETE OR TRUNCATE ON lastwright.record FOR EACH STATEMENT EXECUTE FUNCTION lastwright.never();`

/** Who may see and write which rows. */
const rights = ({ pc }: Roles): string => `
CREATE FUNCTION lastwright.my_origin() RETURNS text LANGUAGE sql STABLE ${asOwner} AS $$
SELECT origin FROM lastwright.pc WHERE login = session_user AND revoked IS NULL $$;
CREATE POLICY admitted ON lastwright.meta FOR SELECT TO ${pc} USING ((SELECT lastwright.my_origin()) IS NOT NULL);
CREATE POLICY admitted ON lastwright.pc FOR SELECT TO ${pc} USING ((SELECT lastwright.my_origin()) IS NOT NULL);
CREATE POLICY admitted ON lastwright.guest FOR SELECT TO ${pc} USING ((SELECT lastwright.my_origin()) IS NOT NULL);
CREATE POLICY admitted ON lastwright.record FOR SELECT TO ${pc} USING ((SELECT lastwright.my_origin()) IS NOT NULL);
CREATE POLICY as_itself ON lastwright.record FOR INSERT TO ${pc} WITH CHECK (origin = (SELECT lastwright.my_origin()));
CREATE POLICY own ON lastwright.keybox FOR SELECT TO ${pc} USING (origin = (SELECT lastwright.my_origin()));
CREATE POLICY as_itself ON lastwright.keybox FOR INSERT TO ${pc} WITH CHECK (made_by = (SELECT lastwright.my_origin()));
GRANT SELECT (tag, generation, step, least_client) ON lastwright.meta TO ${pc};
GRANT SELECT ON lastwright.pc, lastwright.record, lastwright.keybox TO ${pc};
GRANT SELECT (login, made, until, invited_by, state, origin, sign_public, box_public) ON lastwright.guest TO ${pc};
GRANT INSERT (id, origin, number, sealed) ON lastwright.record TO ${pc};
GRANT INSERT ON lastwright.keybox TO ${pc};`

/** Coming in and being put out: roles are made and ended here, so that no PC holds a right to. */
const joining = ({ owner, pc, guest, tag }: Roles): string => `
CREATE FUNCTION lastwright.acting(given_word bytea) RETURNS text LANGUAGE plpgsql STABLE ${asOwner} AS $$
DECLARE me text := lastwright.my_origin();
BEGIN
	IF pg_has_role(session_user, '${owner}', 'MEMBER') THEN RETURN 'administrator'; END IF;
	IF me IS NULL THEN ${refuse('notAdmitted', 'this login is not admitted, or no longer')}; END IF;
	IF NOT EXISTS (SELECT FROM lastwright.meta WHERE word = sha256(given_word)) THEN ${refuse('wrongWord', 'the word of the clinic is another one')}; END IF;
	RETURN me;
END $$;
-- a password comes as what verifies it, so that neither the server nor its log ever holds one
CREATE FUNCTION lastwright.must_be_verifier(given text) RETURNS void LANGUAGE plpgsql ${asOwner} AS $$
BEGIN
	IF given IS NULL OR given !~ '^SCRAM-SHA-256[$][0-9]{4,7}:[A-Za-z0-9+/=]{16,64}[$][A-Za-z0-9+/]{43}=:[A-Za-z0-9+/]{43}=$' THEN ${refuse('badForm', 'not a SCRAM verifier')}; END IF;
END $$;
CREATE FUNCTION lastwright.clear_guests() RETURNS void LANGUAGE plpgsql ${asOwner} AS $$
DECLARE ended name;
BEGIN
	FOR ended IN DELETE FROM lastwright.guest WHERE until < clock_timestamp() RETURNING login LOOP
		EXECUTE format('DROP ROLE IF EXISTS %I', ended);
	END LOOP;
END $$;
CREATE FUNCTION lastwright.invite(given_word bytea, verifier text, minutes int) RETURNS text LANGUAGE plpgsql ${asOwner} AS $$
DECLARE
	who text := lastwright.acting(given_word);
	guest_login text := 'lastwright_${tag}_guest_' || left(replace(gen_random_uuid()::text, '-', ''), 8);
	ends timestamptz := clock_timestamp() + make_interval(mins => minutes);
BEGIN
	PERFORM lastwright.must_be_verifier(verifier);
	IF minutes IS NULL OR minutes NOT BETWEEN 1 AND 10080 THEN ${refuse('badForm', 'an invitation lasts from a minute to a week')}; END IF;
	LOCK TABLE lastwright.guest IN EXCLUSIVE MODE;
	PERFORM lastwright.clear_guests();
	IF (SELECT count(*) FROM lastwright.guest) >= 20 THEN ${refuse('tooMany', 'twenty invitations are open')}; END IF;
	EXECUTE format('CREATE ROLE %I LOGIN CONNECTION LIMIT 3 PASSWORD %L VALID UNTIL %L IN ROLE ${guest}', guest_login, verifier, ends);
	INSERT INTO lastwright.guest (login, until, invited_by) VALUES (guest_login, ends, who);
	RETURN guest_login;
END $$;
CREATE FUNCTION lastwright.make_pc(guest_login name, who text) RETURNS void LANGUAGE plpgsql ${asOwner} AS $$
DECLARE
	coming lastwright.guest;
	pc_login text;
BEGIN
	SELECT * INTO STRICT coming FROM lastwright.guest WHERE login = guest_login;
	pc_login := 'lastwright_${tag}_' || coming.origin;
	-- a server put back from an older dump has lost the row and kept the role
	IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = pc_login) THEN EXECUTE format('CREATE ROLE %I IN ROLE ${pc}', pc_login); END IF;
	EXECUTE format('ALTER ROLE %I LOGIN CONNECTION LIMIT 10 PASSWORD %L', pc_login, coming.verifier);
	-- whoever is to end a session must belong to its role
	EXECUTE format('GRANT %I TO ${owner}', pc_login);
	INSERT INTO lastwright.pc (login, origin, sign_public, box_public, admitted_by) VALUES (pc_login, coming.origin, coming.sign_public, coming.box_public, who);
	UPDATE lastwright.guest SET state = 'admitted', verifier = NULL WHERE login = guest_login;
END $$;
CREATE FUNCTION lastwright.knock(new_origin text, new_sign_public bytea, new_box_public bytea, verifier text, first_word bytea) RETURNS text LANGUAGE plpgsql ${asOwner} AS $$
DECLARE
	mine lastwright.guest;
	is_first boolean;
BEGIN
	PERFORM lastwright.must_be_verifier(verifier);
	LOCK TABLE lastwright.pc IN SHARE ROW EXCLUSIVE MODE;
	SELECT * INTO mine FROM lastwright.guest WHERE login = session_user AND until > clock_timestamp() FOR UPDATE;
	IF NOT FOUND THEN ${refuse('invitationEnded', 'this invitation has ended')}; END IF;
	-- asked again since the answer was lost
	IF mine.state <> 'open' AND mine.origin = new_origin AND mine.sign_public = new_sign_public AND mine.box_public = new_box_public THEN RETURN mine.state; END IF;
	IF mine.state <> 'open' THEN ${refuse('invitationEnded', 'this invitation was used')}; END IF;
	IF EXISTS (SELECT FROM lastwright.pc WHERE origin = new_origin) THEN ${refuse('nameTaken', 'an installation of this name was here before')}; END IF;
	IF new_origin !~ '^[0-9a-f]{12}$' OR octet_length(new_sign_public) <> 44 OR octet_length(new_box_public) <> 44 THEN ${refuse('badForm', 'not the name and keys of an installation')}; END IF;
	UPDATE lastwright.guest SET state = 'waiting', origin = new_origin, sign_public = new_sign_public, box_public = new_box_public, verifier = knock.verifier WHERE login = session_user;
	is_first := mine.invited_by = 'administrator' AND NOT EXISTS (SELECT FROM lastwright.pc);
	IF NOT is_first THEN NOTIFY lastwright; RETURN 'waiting'; END IF;
	IF first_word IS NULL THEN ${refuse('badForm', 'the first PC says the word of the clinic')}; END IF;
	UPDATE lastwright.meta SET word = sha256(first_word);
	PERFORM lastwright.make_pc(session_user, 'administrator');
	RETURN 'admitted';
END $$;
CREATE FUNCTION lastwright.knocked() RETURNS text LANGUAGE sql STABLE ${asOwner} AS $$
SELECT state FROM lastwright.guest WHERE login = session_user AND until > clock_timestamp() $$;
CREATE FUNCTION lastwright.admit(given_word bytea, guest_login name) RETURNS void LANGUAGE plpgsql ${asOwner} AS $$
DECLARE who text := lastwright.acting(given_word);
BEGIN
	PERFORM FROM lastwright.guest WHERE login = guest_login AND state = 'waiting' AND until > clock_timestamp() FOR UPDATE;
	IF NOT FOUND THEN ${refuse('invitationEnded', 'nobody waits with this invitation')}; END IF;
	PERFORM lastwright.make_pc(guest_login, who);
	NOTIFY lastwright;
END $$;
CREATE FUNCTION lastwright.refuse(given_word bytea, guest_login name) RETURNS void LANGUAGE plpgsql ${asOwner} AS $$
BEGIN
	PERFORM lastwright.acting(given_word);
	UPDATE lastwright.guest SET state = 'refused', verifier = NULL WHERE login = guest_login AND state IN ('open', 'waiting');
	IF NOT FOUND THEN ${refuse('invitationEnded', 'there is no such open invitation')}; END IF;
END $$;
CREATE FUNCTION lastwright.revoke(given_word bytea, ended_origin text, next_word_digest bytea) RETURNS void LANGUAGE plpgsql ${asOwner} AS $$
DECLARE
	who text := lastwright.acting(given_word);
	ended_login name;
BEGIN
	UPDATE lastwright.pc SET revoked = coalesce(revoked, clock_timestamp()), revoked_by = coalesce(revoked_by, who) WHERE origin = ended_origin RETURNING login INTO ended_login;
	IF NOT FOUND THEN ${refuse('unknownPc', 'there is no such installation')}; END IF;
	-- whoever is put out knew the word
	IF next_word_digest IS NOT NULL THEN UPDATE lastwright.meta SET word = next_word_digest; END IF;
	IF EXISTS (SELECT FROM pg_roles WHERE rolname = ended_login) THEN EXECUTE format('ALTER ROLE %I NOLOGIN PASSWORD NULL', ended_login); END IF;
	PERFORM pg_terminate_backend(pid) FROM pg_stat_activity WHERE usename = ended_login AND pid <> pg_backend_pid();
	NOTIFY lastwright;
END $$;
CREATE FUNCTION lastwright.seen(at_position bigint) RETURNS void LANGUAGE sql ${asOwner} AS $$
UPDATE lastwright.pc SET seen = clock_timestamp(), seen_position = at_position WHERE login = session_user AND revoked IS NULL $$;
REVOKE ALL ON ALL FUNCTIONS IN SCHEMA lastwright FROM PUBLIC;
GRANT EXECUTE ON FUNCTION lastwright.my_origin, lastwright.invite, lastwright.admit, lastwright.refuse, lastwright.revoke, lastwright.seen TO ${pc};
GRANT EXECUTE ON FUNCTION lastwright.knock, lastwright.knocked TO ${guest};`

/** The schema on the server, one numbered step after another; a step that has shipped is never edited. */
export const steps: readonly ((roles: Roles) => string)[] = [(roles) => [tables(roles), triggers, rights(roles), joining(roles), 'RESET ROLE;'].join('\n')]
