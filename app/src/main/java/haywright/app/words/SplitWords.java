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
            case BALING_DAY -> "by day of baling: %s h lie between the first bale and the last".formatted(found);
            case SIZE -> "by size: %s tons are in it".formatted(found);
            case SIZE_FOR_NITRATE -> "by size, for nitrate: %s tons are in it".formatted(found);
            case RAIN -> "by rain: some of it was rained on and some was not";
            case KEEPING -> "by how it is kept: some of it lies differently";
            case TORN_WRAP -> "by wrap: some of it has holes";
        };
    }

    public static String cost(LotCheck.Warning warning) {
        return switch (warning.by()) {
            case CUTTING ->
                "Cuttings of one field differ by 3 to 4 points of protein (one standard deviation). One composite gives the"
                        + " mean of both; what goes in front of a pen on any day may be that far from it.";
            case FIELD ->
                "Fields differ by 2 to 3 points of protein and about 3 of NDF (one standard deviation), more than bales of one"
                        + " field do.";
            case PLANTS ->
                "The book's spread between bales is for one mix of plants; here it is too small, and the half-width on the"
                        + " plan too narrow.";
            case BALING_DAY ->
                "More than 48 h of baling is more than one lot by the published rule: dew, heat and leaf loss change from day"
                        + " to day.";
            case SIZE ->
                "A lot is at most 200 tons by the published rule. One source counts tons as they lie, another tons of dry"
                        + " matter; the stricter is used here.";
            case SIZE_FOR_NITRATE ->
                "For nitrate a lot is at most 100 tons by the published rule, and parts of a field are tested apart: it lies"
                        + " in patches.";
            case RAIN ->
                "Rain washes out sugars and breaks leaves: the composite is the mean of two hays, and neither is it.";
            case KEEPING ->
                "What lies outside loses dry matter and quality every month that what lies inside does not: they drift apart,"
                        + " and one result goes stale for both.";
            case TORN_WRAP ->
                "Air has got in: heat and mold in some bales. Sampled with the sound ones they spoil the mean and hide"
                        + " themselves.";
        };
    }
}
