package haywright.diet;

import haywright.cattle.need.MicrobialProtein;
import haywright.cattle.need.Need;
import haywright.diet.DietRow.Kind;
import haywright.diet.DietRow.Sense;
import haywright.diet.Law.Counted;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.Made;
import haywright.quantity.Unit;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Metabolizable protein beside crude: what the microbes of the rumen make, and what passes them.
 * <pre>
 * MP = 0.64·min(MCP, RDP) + 0.80·RUP          g a head and day, at least what is needed
 * </pre>
 * The microbes make no more than the energy lets them ({@code MCP}) and no more than degradable protein is there
 * ({@code RDP}); each of the two is a row, so that neither straw is credited with protein that it starves them of, nor
 * bypass protein with what they would have made. Each feed counts at its own TDN, which is below what a mix of poor and
 * good feed would give, on the safe side.
 *
 * <p>Of a feed whose undegradable share nobody measured it is the one at which the shortcut MP = 0.67·CP holds.
 */
final class ProteinRows {
    private static final double GRAMS = 1000;

    private final Need need;
    private final Rows row;

    ProteinRows(List<Feed> feeds, Need need) {
        this.need = need;
        row = new Rows(feeds, need);
    }

    List<DietRow> rows() {
        double microbes = PracticeLimits.value("L28c") / 100;
        // what the newer edition's equation has beside energy, once a head
        double constant = microbes * made(0, 0);
        return List.of(
                of(
                        "mp",
                        "metabolizable protein (limited by energy)",
                        (f, made) -> microbes * (made(1, tdn(f, made)) - made(0, 0)) + passing(f, made),
                        asked -> constant),
                of(
                        "mp_rumen",
                        "metabolizable protein (limited by degradable protein)",
                        (f, made) -> microbes * GRAMS * protein(f, made) * (1 - undegradable(f)) + passing(f, made),
                        asked -> 0));
    }

    private DietRow of(String id, String name, Law.PerKg perKg, ToDoubleFunction<Need> beside) {
        return row.of(
                id,
                Kind.NEED,
                name,
                Sense.AT_LEAST,
                Unit.GRAM_A_DAY,
                new Law(Need::metabolizableProtein, perKg, null, beside, Counted.SURE),
                PracticeLimits.source("L28c"));
    }

    /** Grams of microbial protein of so many kg of dry matter. */
    private double made(double kg, double tdn) {
        return new MicrobialProtein(need.system(), kg, Math.min(tdn, 100)).grams();
    }

    private static double tdn(Feed feed, Made made) {
        boolean isNone = feed.feedClass() == FeedClass.MINERAL || feed.feedClass() == FeedClass.NPN;
        return isNone ? 0 : Math.max(0, Diet.value(feed, made, Analyte.TDN));
    }

    /** kg in a kg of dry matter. */
    private static double protein(Feed feed, Made made) {
        return Diet.value(feed, made, Analyte.CP) / 100;
    }

    private static double passing(Feed feed, Made made) {
        return GRAMS * PracticeLimits.value("L28b") / 100 * protein(feed, made) * undegradable(feed);
    }

    /** Share of the crude protein. */
    private static double undegradable(Feed feed) {
        if (feed.feedClass() == FeedClass.NPN) {
            return 0;
        }
        var made = feed.composition();
        var kept = made.value(Analyte.RUP);
        var share = made.value(Analyte.RDP);
        double percent = share.isPresent() ? 100 - share.getAsDouble() : kept.orElse(PracticeLimits.value("L28"));
        return percent / 100;
    }
}
