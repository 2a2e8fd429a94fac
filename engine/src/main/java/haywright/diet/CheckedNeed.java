package haywright.diet;

import haywright.cattle.need.DietaryNeed;
import haywright.cattle.need.MicrobialProtein;
import haywright.cattle.need.Need;
import haywright.cattle.need.Nutrient;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.quantity.Unit;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.DoubleStream;

/**
 * A need that is held against a mix and never decides it, since most feeds have no figure for it: a limit that counted
 * those as zero would buy feed for what nobody measured. Of such a feed the least that may be in it counts and the most,
 * so that the verdict holds whatever a test would say, or says that it cannot be told.
 * <pre>
 * least = Σ least·x / Σ x             most = Σ most·x / Σ x
 * </pre>
 * Degradable protein is the tested share of the crude protein, or what the undegradable share leaves; of a feed without
 * either it is none to all of its crude protein. Minerals have none, urea is degradable whole. Vitamin A counts of no feed:
 * hay loses it, and no laboratory's sheet has it.
 *
 * @param id {@code mg}, {@code rdp}, {@code vitamin_a}
 * @param unit of the three figures, of the dry matter of all that is eaten
 * @param most infinite where nothing bounds it
 * @param unknown feeds of the mix without a figure
 */
public record CheckedNeed(
        String id,
        String name,
        Unit unit,
        double needed,
        double least,
        double most,
        List<String> unknown,
        Source source) {
    /** What can be said of it. */
    public enum Verdict {
        MET,
        SHORT,
        /** Some of its feeds have no figure, and it turns on them. */
        UNTESTED
    }

    public CheckedNeed {
        unknown = List.copyOf(unknown);
    }

    public Verdict verdict() {
        return least >= needed ? Verdict.MET : most < needed ? Verdict.SHORT : Verdict.UNTESTED;
    }

    /**
     * Magnesium, degradable protein, vitamin A; none where nothing is eaten.
     *
     * @param kg dry matter of each feed, a head and day
     */
    static List<CheckedNeed> of(Need need, List<Feed> feeds, double[] kg) {
        double eaten = DoubleStream.of(kg).sum();
        if (!(eaten > 0)) {
            return List.of();
        }
        var mix = new Mixed(feeds, kg, eaten);
        var needs = new ArrayList<CheckedNeed>();
        needs.add(mix.need("mg", need.dietary(Nutrient.MAGNESIUM), f -> Span.of(f, Analyte.MG)));
        mix.degradable(need).ifPresent(needs::add);
        needs.add(mix.need("vitamin_a", need.dietary(Nutrient.VITAMIN_A), f -> Span.UNKNOWN));
        return needs;
    }

    /** What a kg of a feed brings: the two differ where nobody measured it, or found it only to be less than a limit. */
    private record Span(double least, double most) {
        static final Span UNKNOWN = new Span(0, Double.POSITIVE_INFINITY);
        static final Span NONE = new Span(0, 0);

        static Span of(Feed feed, Analyte analyte) {
            var made = feed.composition();
            return made.knows(analyte)
                    ? new Span(
                            made.least(analyte).orElseThrow(),
                            made.most(analyte).orElseThrow())
                    : UNKNOWN;
        }

        /** Degradable protein, percent of dry matter. */
        static Span degradable(Feed feed) {
            var made = feed.composition();
            if (feed.feedClass() == FeedClass.MINERAL) {
                return NONE;
            }
            var protein = of(feed, Analyte.CP);
            if (feed.feedClass() == FeedClass.NPN) {
                return protein;
            }
            var share = made.value(Analyte.RDP);
            var kept = made.value(Analyte.RUP);
            return share.isPresent()
                    ? protein.times(share.getAsDouble() / 100)
                    : kept.isPresent() ? protein.times(1 - kept.getAsDouble() / 100) : new Span(0, protein.most);
        }

        private Span times(double share) {
            return new Span(least * share, most * share);
        }
    }

    private record Mixed(List<Feed> feeds, double[] kg, double eaten) {
        private CheckedNeed need(String id, DietaryNeed asked, Function<Feed, Span> perKg) {
            return checked(id, asked.nutrient().words(), asked.unit(), asked.share(), perKg, asked.source());
        }

        /** Empty where a feed's energy is not known: how much the rumen takes goes by it. */
        private Optional<CheckedNeed> degradable(Need need) {
            double digestible = 0;
            for (int i = 0; i < kg.length; i++) {
                var feed = feeds.get(i);
                boolean isNone = feed.feedClass() == FeedClass.MINERAL || feed.feedClass() == FeedClass.NPN;
                var tdn = isNone ? OptionalDouble.of(0) : feed.composition().value(Analyte.TDN);
                if (kg[i] > 0 && tdn.isEmpty()) {
                    return Optional.empty();
                }
                digestible += kg[i] * tdn.orElse(0);
            }
            var rumen = new MicrobialProtein(need.system(), eaten, digestible / eaten);
            return Optional.of(checked(
                    "rdp",
                    "degradable protein, for the rumen",
                    Unit.PERCENT,
                    rumen.grams() / eaten / 10,
                    Span::degradable,
                    rumen.source()));
        }

        private CheckedNeed checked(
                String id, String name, Unit unit, double needed, Function<Feed, Span> perKg, Source source) {
            double least = 0;
            double most = 0;
            var unknown = new ArrayList<String>();
            for (int i = 0; i < kg.length; i++) {
                if (kg[i] > 0) {
                    var span = perKg.apply(feeds.get(i));
                    least += kg[i] * span.least;
                    most += kg[i] * span.most;
                    if (span.least < span.most) {
                        unknown.add(feeds.get(i).name());
                    }
                }
            }
            return new CheckedNeed(id, name, unit, needed, least / eaten, most / eaten, unknown, source);
        }
    }
}
