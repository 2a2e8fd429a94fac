package haywright.sampling;

import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;

/** Whether a lot is one lot. Nothing is refused that a rancher may do anyway: each warning is a way it is more than one. */
public record LotCheck(List<Warning> warnings) {
    /** What sets parts of a lot apart. */
    public enum By {
        CUTTING,
        FIELD,
        PLANTS,
        BALING_DAY,
        SIZE,
        /** Nitrate lies in patches, so a lot tested for it is smaller. */
        SIZE_FOR_NITRATE,
        RAIN,
        KEEPING,
        TORN_WRAP
    }

    /**
     * @param by what to split the lot by
     * @param found how many cuttings, fields or kinds, hours of baling or tons there are; 0 where nothing is counted
     */
    public record Warning(By by, double found, Source source) {}

    private static final Source APART =
            Source.judgment("spread between cuts, sites and years of public trial data, rounded");

    private static final double MOST_HOURS =
            Double.parseDouble(PublishedRule.named("R003").high());
    private static final double MOST_TONS =
            Double.parseDouble(PublishedRule.named("R001").high());
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
        var kept = Material.LARGE_ROUND_BALE.method().source();
        var found = new ArrayList<Warning>();
        if (lot.cuttings() > 1) {
            found.add(new Warning(By.CUTTING, lot.cuttings(), APART));
        }
        if (lot.fields() > 1) {
            found.add(new Warning(By.FIELD, lot.fields(), APART));
        }
        if (lot.species() > 1) {
            found.add(new Warning(
                    By.PLANTS, lot.species(), PublishedRule.named("R001").source()));
        }
        if (hay && lot.balingHours() > MOST_HOURS) {
            found.add(new Warning(
                    By.BALING_DAY,
                    lot.balingHours(),
                    PublishedRule.named("R003").source()));
        }
        if (hay && lot.tons() > MOST_TONS) {
            found.add(
                    new Warning(By.SIZE, lot.tons(), PublishedRule.named("R001").source()));
        }
        if (hay && purpose == Purpose.NITRATE && lot.tons() > NITRATE_TONS) {
            found.add(new Warning(
                    By.SIZE_FOR_NITRATE, lot.tons(), PublishedRule.named("R086").source()));
        }
        if (lot.partRained()) {
            found.add(new Warning(By.RAIN, 0, kept));
        }
        if (lot.storedApart()) {
            found.add(new Warning(By.KEEPING, 0, kept));
        }
        if (lot.tornWrap()) {
            found.add(new Warning(By.TORN_WRAP, 0, Material.BALEAGE.method().source()));
        }
        return new LotCheck(found);
    }
}
