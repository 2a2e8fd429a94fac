package haywright.app.exchange.lab;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Units as laboratories write them out, in the signs the house knows: "lb per ton", "grams per kilogram", "g kg-1" and
 * "parts per million" are lb/ton, g/kg and ppm; 1 ‰ is 1 g/kg, and 1 g in a tonne is 1 ppm.
 */
public final class UnitWords {
    private static final String HUNDREDWEIGHT = "hundred-?weights?|cwt";
    private static final String POUND = "pounds?|lbs?|#";
    private static final String KILOGRAM = "kilogram(?:me)?s?|kilos?|kgs?";
    private static final String MILLIGRAM = "milligram(?:me)?s?|mgs?|mgm";
    private static final String MICROGRAM = "microgram(?:me)?s?|mcg|[uµ]g";
    private static final String GRAM = "gram(?:me)?s?|gms?|grms?|g";
    private static final String SHORT_TON = "(?:short |u\\.?s\\.? )?tons?";
    private static final String TONNE = "tonnes?|metric tons?|t";
    private static final String MCAL = "mega-?calories?|mcals?";
    private static final String MJ = "mega-?joules?|mj";
    private static final String MEQ = "milli-?equivalents?|meqs?";

    private record Written(Pattern pattern, String sign) {}

    private static final List<Written> ALL = List.of(
            ratio(POUND, SHORT_TON, "lb/ton"),
            ratio(KILOGRAM, TONNE, "g/kg"),
            ratio(GRAM, TONNE, "ppm"),
            ratio(GRAM, KILOGRAM, "g/kg"),
            ratio(MILLIGRAM, KILOGRAM, "mg/kg"),
            ratio(MILLIGRAM, GRAM, "g/kg"),
            ratio(MICROGRAM, KILOGRAM, "ug/kg"),
            ratio(MICROGRAM, GRAM, "ppm"),
            ratio(MCAL, POUND, "mcal/lb"),
            ratio(MCAL, KILOGRAM, "mcal/kg"),
            ratio(MCAL, HUNDREDWEIGHT, "mcal/cwt"),
            ratio(MJ, KILOGRAM, "mj/kg"),
            ratio(MEQ, KILOGRAM, "meq/kg"),
            ratio(MEQ, "100 ?(?:" + GRAM + ")", "meq/100g"),
            ratio(GRAM, "100 ?(?:" + GRAM + ")", "%"),
            whole("parts? per million|p\\.p\\.m\\.?", "ppm"),
            whole("parts? per billion|p\\.p\\.b\\.?", "ppb"),
            whole("parts? per (?:thousand|mille)|per ?mill?e?|‰|o/oo", "g/kg"),
            whole("per ?cent|pct\\.?", "%"));

    /** A word that stands in a unit and in little else behind a figure. */
    private static final Pattern PART = Pattern.compile(
            "(?iu)(?:" + String.join("|", POUND, KILOGRAM, MILLIGRAM)
                    + "|" + String.join("|", MICROGRAM, GRAM, MCAL, MJ, MEQ, HUNDREDWEIGHT)
                    + "|ounces?|oz|tons?|tonnes?|metric|grains?|gr|k?cals?|kilo-?calories?|calories?|k?j|k?joules?|moles?|m?mol|[iu]u|iu|units?|parts?"
                    + "|per|pp[a-z]|.*[0-9]?[%‰].*|.*\\p{L}(?:\\^?[-−–][12]|⁻?[¹²])|[\\p{L}#µ.]{1,12}/[\\p{L}0-9.]{1,12}|.*\\bper\\b.*)");

    private static final int LONGEST = 200;
    /** One of these stands in every unit that is written out. */
    private static final List<String> HINTS =
            List.of("/", "per", "part", "pct", "p.p", "‰", "pound", "lb", " kg", " kilo", "g 100");

    private UnitWords() {}

    private static Written ratio(String of, String in, String sign) {
        return whole(
                "(?:%s)\\.?(?:\\s*/\\s*|\\s+(?:per|an?|in an?|of|to the|each) (?:one )?)(?:%s)\\.?|(?:%s)[ .·*](?:%s)(?:\\^?(?:[-−–⁻]?1|⁻?¹))?"
                        .formatted(of, in, of, in),
                sign);
    }

    private static Written whole(String words, String sign) {
        return new Written(Pattern.compile("(?iu)(?<![\\p{L}\\p{N}#])(?:" + words + ")(?![\\p{L}\\p{N}/-])"), sign);
    }

    /** A text with each unit that is written out in it as its sign; the rest as it stands. */
    static String plain(String text) {
        if (!isPerhapsIn(text)) {
            return text;
        }
        var plain = text.replace('μ', 'µ');
        for (var one : ALL) {
            plain = one.pattern.matcher(plain).replaceAll(one.sign);
        }
        return plain;
    }

    /** Whether a unit may be written out in a text; most texts are sooner told by this. */
    public static boolean isPerhapsIn(String text) {
        var small = text.length() > LONGEST ? "" : text.toLowerCase(Locale.ROOT);
        for (var hint : HINTS) {
            if (small.contains(hint)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a word behind a figure belongs to a unit, known or not. */
    public static boolean isPart(String word) {
        var bare = word.strip().replaceAll("^[(\\[]+|[)\\],;:]+$", "").toLowerCase(Locale.ROOT);
        return PART.matcher(bare).matches();
    }
}
