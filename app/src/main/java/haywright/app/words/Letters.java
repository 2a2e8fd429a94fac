package haywright.app.words;

import java.util.regex.Pattern;

/** Letters that not every place has: a page, a paper, a terminal. */
public final class Letters {
    /** Everything that is no Char of XML 1.0 (W3C, section 2.2): nothing that is read as XML may hold it. */
    private static final Pattern NOT_XML =
            Pattern.compile("[^\\x09\\x0A\\x0D\\x20-\\uD7FF\\uE000-\\uFFFD\\x{10000}-\\x{10FFFF}]");

    /** What a terminal would take for an order, or show as nothing. */
    private static final Pattern ORDERS = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Cs}\\u2028\\u2029]");

    private static final Pattern SOFT_BREAK = Pattern.compile("[\\x0B\\f]");

    private Letters() {}

    /** With a blank for each sign that a page cannot hold. */
    public static String ofXml(String text) {
        return NOT_XML.matcher(text).replaceAll(" ");
    }

    public static boolean isXml(String text) {
        return !NOT_XML.matcher(text).find();
    }

    /** Programs that write letters break a line or page by signs of their own: a line of several, or a blank in one line. */
    public static String withBreaks(String typed) {
        return SOFT_BREAK.matcher(typed).replaceAll(typed.indexOf('\n') >= 0 ? "\n" : " ");
    }

    /** Whether anything of it can be seen. */
    public static boolean isSeen(String text) {
        return text.codePoints()
                .anyMatch(c -> !Character.isWhitespace(c)
                        && !Character.isSpaceChar(c)
                        && Character.getType(c) != Character.FORMAT);
    }

    /** For one line of a terminal: what is no letter there is written as its number. */
    public static String inOneLine(String text) {
        return ORDERS.matcher(text)
                .replaceAll(sign -> "<U+%04X>".formatted(sign.group().codePointAt(0)));
    }
}
