package haywright.app.words;

/** Small whole numbers in words, for a page that holds few figures. */
public final class NumberWords {
    private static final String[] BELOW_TWENTY = {
        "zero",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "thirteen",
        "fourteen",
        "fifteen",
        "sixteen",
        "seventeen",
        "eighteen",
        "nineteen"
    };
    private static final String[] TENS = {
        "", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"
    };

    private NumberWords() {}

    /** @param number 0 to 99 */
    public static String of(int number) {
        if (number < BELOW_TWENTY.length) {
            return BELOW_TWENTY[number];
        }
        return TENS[number / 10] + (number % 10 == 0 ? "" : "-" + BELOW_TWENTY[number % 10]);
    }

    /** {@code three dollars and sixty-nine cents}, {@code ninety cents}. @param dollars 0 to under 100 */
    public static String dollars(double dollars) {
        long cents = Math.round(100 * dollars);
        var whole = of((int) (cents / 100)) + (cents / 100 == 1 ? " dollar" : " dollars");
        var rest = of((int) (cents % 100)) + (cents % 100 == 1 ? " cent" : " cents");
        return cents < 100 ? rest : cents % 100 == 0 ? whole : whole + " and " + rest;
    }

    /** To the nearest half: {@code four and a half}, {@code half a}. @param number 0 to 99 */
    public static String halves(double number) {
        long halves = Math.round(2 * number);
        var whole = of((int) (halves / 2));
        return halves == 1 ? "half a" : halves % 2 == 0 ? whole : whole + " and a half";
    }

    /** As said in winter: {@code ten below (°F)}, {@code zero (°F)}. @param shown in the degrees of the ranch */
    public static String degrees(double shown) {
        int whole = (int) Math.abs(Math.rint(shown));
        return (whole == 0 ? "zero" : of(whole) + (shown < 0 ? " below" : " above")) + " (" + Measures.degree() + ")";
    }

    /** {@code enough seven times in ten}, {@code not enough}. */
    public static String enough(double percent) {
        int inTen = (int) Math.round(percent / 10);
        return switch (inTen) {
            case 0 -> "not enough";
            case 1 -> "enough once in ten";
            case 10 -> percent < 99.5 ? "enough more than nine times in ten" : "enough ten times in ten";
            default -> "enough %s times in ten".formatted(of(inTen));
        };
    }
}
