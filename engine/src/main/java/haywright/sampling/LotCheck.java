package haywright.sampling;

import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether a lot is one lot. Nothing is refused that a rancher may do anyway: each warning says what taking it as one
 * costs in certainty.
 */
public record LotCheck(List<Warning> warnings) {
    /**
     * @param split what to part the lot by
     * @param cost what is lost when it is sampled as one
     */
    public record Warning(String split, String cost, Source source) {}

    private static final Source APART =
            Source.judgement("spread between cuts, sites and years of public trial data, rounded");

    private static final double NITRATE_TONS =
            Double.parseDouble(PublishedRule.named("R086").high());

    public LotCheck {
        warnings = List.copyOf(warnings);
    }

    public static LotCheck of(Material material, LotFacts lot) {
        return of(material, lot, Purpose.NUTRIENTS);
    }

    /** @param material sizes and days of a lot are published for hay and baleage, not for silage or grain */
    public static LotCheck of(Material material, LotFacts lot, Purpose purpose) {
        boolean hay = material.isBaled() || material == Material.LOOSE_STACK;
        var found = new ArrayList<Warning>();
        if (lot.cuttings() > 1) {
            found.add(new Warning(
                    "by cutting: " + lot.cuttings() + " cuttings are in it",
                    "Cuttings of one field differ by 3 to 4 points of protein (one standard deviation). One composite gives"
                            + " the mean of both; what goes in front of a pen on any day may be that far from it.",
                    APART));
        }
        if (lot.fields() > 1) {
            found.add(new Warning(
                    "by field: " + lot.fields() + " fields are in it",
                    "Fields differ by 2 to 3 points of protein and about 3 of NDF (one standard deviation), more than bales"
                            + " of one field do.",
                    APART));
        }
        if (lot.species() > 1) {
            found.add(new Warning(
                    "by kind of plant: " + lot.species() + " kinds are in it",
                    "The book's spread between bales is for one mix of plants; here it is too small, and the half-width on"
                            + " the plan too narrow.",
                    PublishedRule.named("R001").source()));
        }
        if (hay && lot.balingHours() > 48) {
            found.add(new Warning(
                    "by day of baling: %.0f h lie between the first bale and the last".formatted(lot.balingHours()),
                    "More than 48 h of baling is more than one lot by the published rule: dew, heat and leaf loss change"
                            + " from day to day.",
                    PublishedRule.named("R003").source()));
        }
        if (hay && lot.tons() > 200) {
            found.add(new Warning(
                    "by size: %,.0f tons are in it".formatted(lot.tons()),
                    "A lot is at most 200 tons by the published rule. One source counts tons as they lie, another tons of"
                            + " dry matter; the stricter is used here.",
                    PublishedRule.named("R001").source()));
        }
        if (hay && purpose == Purpose.NITRATE && lot.tons() > NITRATE_TONS) {
            found.add(new Warning(
                    "by size, for nitrate: %,.0f tons are in it".formatted(lot.tons()),
                    "For nitrate a lot is at most 100 tons by the published rule, and parts of a field are tested apart: it"
                            + " lies in patches.",
                    PublishedRule.named("R086").source()));
        }
        if (lot.partRained()) {
            found.add(new Warning(
                    "by rain: some of it was rained on and some was not",
                    "Rain washes out sugars and breaks leaves: the composite is the mean of two hays, and neither is it.",
                    Material.LARGE_ROUND_BALE.method().source()));
        }
        if (lot.storedApart()) {
            found.add(new Warning(
                    "by how it is kept: some of it lies differently",
                    "What lies outside loses dry matter and quality every month that what lies inside does not: they drift"
                            + " apart, and one result goes stale for both.",
                    Material.LARGE_ROUND_BALE.method().source()));
        }
        if (lot.tornWrap()) {
            found.add(new Warning(
                    "by wrap: some of it has holes",
                    "Air has got in: heat and mould in some bales. Sampled with the sound ones they spoil the mean and hide"
                            + " themselves.",
                    Material.BALEAGE.method().source()));
        }
        return new LotCheck(found);
    }
}
