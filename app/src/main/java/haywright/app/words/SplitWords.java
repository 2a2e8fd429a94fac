package haywright.app.words;

import haywright.sampling.LotCheck;

/** By what a lot is better split, and what is lost where it is sampled as one. */
public final class SplitWords {
    private SplitWords() {}

    /** Goes on from "Split it". */
    public static String by(LotCheck.Warning warning) {
        var found = Show.number(warning.found(), 0);
        return switch (warning.by()) {
            case CUTTING -> "by cutting: %s cuttings are in it".formatted(found);
            case FIELD -> "by field: %s fields are in it".formatted(found);
            case PLANTS -> "by kind of plant: %s kinds are in it".formatted(found);
            case BALING_DAY -> "by day of baling: %s hours from first bale to last".formatted(found);
            case SIZE -> "by size: %s are in it".formatted(tons(warning.found()));
            case SIZE_FOR_NITRATE -> "by size, for nitrate: %s are in it".formatted(tons(warning.found()));
            case RAIN -> "by rain: some of it was rained on and some was not";
            case KEEPING -> "by how it is kept: some is stored differently";
            case TORN_WRAP -> "by wrap: some of it has holes";
        };
    }

    /** As the rules have them: whole. */
    private static String tons(double tons) {
        return Show.number(Measures.ofTons(tons), 0) + " " + Measures.tons();
    }

    public static String cost(LotCheck.Warning warning) {
        return switch (warning.by()) {
            case CUTTING ->
                "Cuttings of one field differ by 3 to 4 points of protein (one standard deviation). One composite gives their"
                        + " average; what a pen gets on any day may be that far off.";
            case FIELD ->
                "Fields differ by 2 to 3 points of protein and about 3 of NDF (one standard deviation),"
                        + " more than bales of one field.";
            case PLANTS ->
                "Bales of one mix differ less than this lot will: the accuracy on the sampling plan looks better than"
                        + " it is.";
            case BALING_DAY ->
                "The published rule is 48 hours of baling to a lot: dew, heat and leaf loss change from day"
                        + " to day.";
            case SIZE ->
                "The published rule is at most %s to a lot. One source counts %s as fed, another dry matter; the stricter is used."
                        .formatted(tons(200), Measures.tons());
            case SIZE_FOR_NITRATE ->
                "For nitrate the published rule is at most %s to a lot, with parts of a field tested apart: it comes in patches."
                        .formatted(tons(100));
            case RAIN -> "Rain washes out sugar and breaks leaves: one composite averages two different hays.";
            case KEEPING ->
                "Hay outside loses dry matter and quality every month; hay inside does not. One result soon fits"
                        + " neither.";
            case TORN_WRAP ->
                "Air gets in: some bales heat and mold. Sampled with the sound ones, they throw off the average and"
                        + " go unseen.";
        };
    }
}
