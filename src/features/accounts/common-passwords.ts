/** Passwords of eight characters and more that head every published count of leaked ones; a short list of our own. */
const COMMON = new Set(
  `12345678 123456789 1234567890 0123456789 987654321 9876543210 87654321 11111111 00000000 88888888 12341234
  11223344 12121212 123123123 123321123 147258369 147852369 741852963 789456123 159357456 1qaz2wsx 1qaz2wsx3edc
  1q2w3e4r 1q2w3e4r5t 1q2w3e4r5t6y q1w2e3r4 q1w2e3r4t5 qwertyui qwertyuiop qwerty12 qwerty123 qwerty1234 qwerty12345
  qwertyqwerty asdfghjk asdfghjkl asdfasdf asdf1234 zxcvbnm1 zxcvbnm123 qazwsxedc qazwsx12 1234qwer qwer1234 abcd1234
  abcdefgh abcdefg1 abc12345 abc123456 a1b2c3d4 aa123456 aa12345678 a1234567 a12345678 a123456789 aaaaaaaa 12345abc
  1234abcd 123456abc 123456789a 12345678a 1234567a q1234567 q12345678 password password1 password12 password123
  password1234 password01 password1! password! passw0rd p@ssw0rd p@ssword pa55word pass1234 pass12345 passpass
  passwort passwort1 passwort123 motdepasse contrasena wachtwoord geheim123 letmein1 letmein123 letmein! welcome1
  welcome123 welcome! welcome01 changeme changeme1 changeme123 changeit iloveyou iloveyou1 iloveyou2 iloveyou! loveyou1
  lovelove mylove123 princess princess1 sunshine sunshine1 football football1 baseball baseball1 basketball superman
  superman1 batman123 starwars starwars1 trustno1 whatever whatever1 computer computer1 internet internet1 michelle
  jennifer jessica1 ashley123 michael1 jordan23 charlie1 samantha victoria alexander alexandra elizabeth christian
  liverpool liverpool1 chelsea1 arsenal1 manchester barcelona juventus cocacola chocolate butterfly strawberry
  blink182 snoopy123 pokemon1 pokemon123 minecraft dragon123 monkey123 shadow123 master123 maverick mustang1 harley123
  ferrari1 mercedes corvette yamaha123 spiderman november december september october1 qwertz123 qwertzui azertyuiop
  azerty123 admin123 admin1234 administrator root1234 test1234 test12345 testtest guest123 user1234 login123
  secret123 access14 hello123 hello1234 hellohello freedom1 lakers24 startrek nintendo slipknot metallica nirvana1
  trains123 railway1 railway123 railroad locomotive steamtrain modelrailway modeltrain modeltrains`.split(
    /\s+/,
  ),
);

/**
 * Why a password is no good because too many people have it, or whoever knows the person would try it first; undefined
 * for a good one. `known` are the person's and the club's names and addresses.
 */
export function passwordFault(password: string, known: readonly string[]): string | undefined {
  const plain = password.normalize("NFKC").toLowerCase().trim();
  if (COMMON.has(plain) || COMMON.has(plain.replaceAll(/[\s._-]/g, "")) || isMonotonous(plain))
    return "Too many people have this one: choose another, such as a sentence.";
  if (known.some((word) => isMostly(plain, word.toLowerCase())))
    return "Who knows you would try this one first: choose another, such as a sentence.";
  return undefined;
}

// two kinds of sign over and over, or one step up or down from sign to sign
function isMonotonous(text: string): boolean {
  const codes = Array.from(text, (sign) => sign.codePointAt(0) ?? 0);
  const steps = new Set(codes.slice(1).map((code, i) => code - (codes[i] ?? 0)));
  return new Set(codes).size <= 2 || (steps.size === 1 && Math.abs([...steps][0] ?? 0) <= 1);
}

const FEW_SIGNS = 4;

/** A name with a year or an exclamation mark is that name. */
function isMostly(text: string, word: string): boolean {
  return [word, word.split("@")[0] ?? ""].some(
    (part) => part.length >= FEW_SIGNS && text.includes(part) && text.length - part.length <= FEW_SIGNS,
  );
}
