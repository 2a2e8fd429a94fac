package haywright.sampling;

import haywright.workings.Refused;
import java.util.Locale;

/**
 * A letter at the end of a code that tells whether it was copied right.
 *
 * <p>Digits, letters and the dash are the numbers 0 to 36. Read as a number to the base 2, sign by sign, a code with its
 * check is divisible by the prime 37: then one wrong character always shows, and so does any swap of neighbors, because
 * no two places next to each other weigh the same. Before the check stands one digit, chosen so that the check comes out
 * as a letter, and as none that looks like a digit. Capitals and small letters count alike; blanks round the whole do not count.
 *
 * @see "ISO/IEC 7064, MOD 37-2: the same principle with another sign at the end (from memory)"
 */
public final class CheckLetter {
    private static final String SIGNS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ-";
    private static final int PRIME = SIGNS.length();

    private CheckLetter() {}

    /** The code with a digit and its check letter behind it. */
    public static String add(String code) {
        var plain = plain(code);
        for (int digit = 0; digit < 10; digit++) {
            var filled = plain + digit;
            var check = SIGNS.charAt(Math.floorMod(-2 * value(filled), PRIME));
            if (isLetter(check)) {
                return filled + check;
            }
        }
        throw new IllegalStateException("ten digits in a row of every other sign always meet a letter");
    }

    /** The code without its digit and letter. */
    public static String read(String checked) {
        var plain = plain(checked);
        if (plain.length() < 3 || !isLetter(plain.charAt(plain.length() - 1)) || value(plain) != 0) {
            throw new Refused(
                    "code",
                    checked.strip(),
                    "its last letter does not fit: a character was changed or two were swapped",
                    "Copy it again from the paper or the phone.");
        }
        return plain.substring(0, plain.length() - 2);
    }

    private static boolean isLetter(char sign) {
        return sign >= 'A' && sign <= 'Z' && sign != 'I' && sign != 'O';
    }

    private static int value(String code) {
        // From 1, so that a first zero weighs something and is missed when it is gone.
        int value = 1;
        for (int i = 0; i < code.length(); i++) {
            value = (2 * value + SIGNS.indexOf(code.charAt(i))) % PRIME;
        }
        return value;
    }

    private static String plain(String code) {
        var plain = code.strip();
        if (plain.isEmpty() || plain.charAt(0) == '-') {
            throw new Refused(
                    "code",
                    code.strip(),
                    "a code begins with a letter or a digit",
                    "Copy it again from the first character.");
        }
        for (int i = 0; i < plain.length(); i++) {
            if (SIGNS.indexOf(capital(plain.charAt(i))) < 0) {
                throw new Refused(
                        "code",
                        code.strip(),
                        "a code has only letters, digits and dashes, and \"" + Character.toString(plain.codePointAt(i))
                                + "\" is none",
                        "Copy it again from the paper or the phone.");
            }
        }
        return plain.toUpperCase(Locale.ROOT);
    }

    /** Of plain letters only: other alphabets have letters whose capitals look like ours. */
    private static char capital(char c) {
        return c >= 'a' && c <= 'z' ? (char) (c - 32) : c;
    }
}
