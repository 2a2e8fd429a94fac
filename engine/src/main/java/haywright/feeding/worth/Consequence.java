package haywright.feeding.worth;

import haywright.diet.Diet;
import haywright.diet.DietRow;
import haywright.diet.Feed;
import haywright.forage.Analyte;
import haywright.forage.Made;
import haywright.ration.LeastCostRation;
import haywright.ration.PricedFeed;
import haywright.ration.Ration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * What a way to feed one group comes to, whatever its feeds turn out to be made of: the feed, and the priced result of
 * falling short (all judgment). Energy: reserves are filled again at the dearest Mcal used, at 0.8 of it kept. Protein: a
 * late purchase at a quarter more. Minerals: nothing. What energy too little does to conception is not in it, nor what
 * energy too much is worth. Feed counts at what decides on it: its price, and what it is worth beside that to other groups
 * because it does not reach for all.
 *
 * @param question as it is asked now
 * @param now its ration to the gram, by what is known now
 * @param asked what it needs, worked out once
 * @param cost dollars that decide on a kg of dry matter eaten of each feed offered
 * @param energyPrice dollars for a Mcal short: of NEm, of growing cattle of NEg
 * @param proteinPrice dollars for a kg of crude protein short
 */
@SuppressWarnings("ArrayRecordComponent")
record Consequence(
        LeastCostRation question, Ration now, Asked asked, double[] cost, double energyPrice, double proteinPrice) {
    private static final double KEPT_OF_REFILLED = 0.8;
    private static final double LATE = 1.25;

    /** Of the ration's energy: a feed that brings less is not used for its energy (judgment). */
    private static final double FOR_ENERGY = 0.1;

    /** A head and day: Mcal, and of protein kg and the least percent. */
    record Asked(boolean grows, double nem, double neg, double protein, double proteinPercent) {}

    /** Empty where there is no ration now: then nothing is decided yet. */
    static Optional<Consequence> of(LeastCostRation question) {
        return exact(question, question.offered())
                .map(now -> new Consequence(
                        question,
                        now,
                        new Asked(
                                now.diet().growth().isPresent(),
                                question.need().nem(),
                                question.need().neg(),
                                question.need().crudeProtein(),
                                question.need().proteinFloor().percent()),
                        question.offered().stream()
                                .mapToDouble(PricedFeed::weighedPerKgEaten)
                                .toArray(),
                        energyPrice(now),
                        proteinPrice(question.offered(), now)));
    }

    /** To the gram, of these feeds. */
    static Optional<Ration> exact(LeastCostRation asked, List<PricedFeed> offered) {
        return offered.isEmpty()
                ? Optional.empty()
                : Optional.of(new LeastCostRation(
                                        offered,
                                        asked.need(),
                                        asked.options(),
                                        asked.sureness(),
                                        LeastCostRation.Amounts.EXACT)
                                .solve())
                        .filter(Ration.class::isInstance)
                        .map(Ration.class::cast);
    }

    private static double energyPrice(Ration now) {
        var energy = now.diet().growth().isPresent() ? Analyte.NEG : Analyte.NEM;
        double least = FOR_ENERGY * now.mean(energy) * now.kg();
        return now.portions().stream()
                        .filter(p -> p.kg() * value(p.feed(), energy) >= least && least > 0)
                        .mapToDouble(p -> p.feed().weighedPerKgEaten() / value(p.feed(), energy))
                        .max()
                        .orElse(0)
                / KEPT_OF_REFILLED;
    }

    /** Of what can be bought the least dear; where nothing can, the dearest of what is fed. */
    private static double proteinPrice(List<PricedFeed> offered, Ration now) {
        var bought = offered.stream()
                .filter(feed -> !feed.own() && value(feed, Analyte.CP) > 0)
                .map(Consequence::perKgOfProtein)
                .min(Comparator.naturalOrder());
        return LATE
                * bought.orElseGet(() -> now.portions().stream()
                        .map(p -> p.feed())
                        .filter(feed -> value(feed, Analyte.CP) > 0)
                        .map(Consequence::perKgOfProtein)
                        .max(Comparator.naturalOrder())
                        .orElse(0.0));
    }

    private static double perKgOfProtein(PricedFeed feed) {
        return 100 * feed.weighedPerKgEaten() / value(feed, Analyte.CP);
    }

    private static double value(PricedFeed feed, Analyte analyte) {
        return Diet.value(feed.feed(), feed.feed().composition(), analyte);
    }

    /** A ration as kg of dry matter eaten a head and day of each feed that is offered. */
    double[] amounts(Ration ration) {
        var kg = new double[question.offered().size()];
        ration.portions().forEach(p -> kg[index(p.feed().feed().id()).orElseThrow()] += p.kg());
        return kg;
    }

    private Optional<Integer> index(String feed) {
        return IntStream.range(0, question.offered().size())
                .boxed()
                .filter(i -> question.offered().get(i).feed().id().equals(feed))
                .findFirst();
    }

    /** Whether these amounts may be fed where the lots are what this diet has: nothing left out, no danger. */
    boolean isAllowed(double[] kg, Diet diet) {
        var ids = new ArrayList<String>();
        diet.feeds().forEach(feed -> ids.add(feed.id()));
        var own = new double[ids.size()];
        for (int i = 0; i < kg.length; i++) {
            int at = ids.indexOf(question.offered().get(i).feed().id());
            if (at >= 0) {
                own[at] = kg[i];
            } else if (kg[i] > 0) {
                return false;
            }
        }
        return diet.rows().stream()
                .filter(row -> row.kind() == DietRow.Kind.DANGER)
                .allMatch(row -> !(row.margin(own) < -HAIR * Math.max(1, Math.abs(row.limit()))));
    }

    /** What the solver's exactness leaves. */
    private static final double HAIR = 1e-6;

    /**
     * What counts of one way that all feeds may be made, by the order in which they are offered.
     *
     * @param nem Mcal in a kg. @param neg Mcal. @param cp %
     */
    @SuppressWarnings("ArrayRecordComponent")
    record Figures(double[] nem, double[] neg, double[] cp) {
        static Figures of(int feeds) {
            return new Figures(new double[feeds], new double[feeds], new double[feeds]);
        }

        void set(int i, PricedFeed feed, Made made) {
            nem[i] = Diet.value(feed.feed(), made, Analyte.NEM);
            neg[i] = Diet.value(feed.feed(), made, Analyte.NEG);
            cp[i] = Diet.value(feed.feed(), made, Analyte.CP);
        }

        /** With one feed as another way has it. */
        Figures with(int i, PricedFeed feed, Made made) {
            var other = new Figures(nem.clone(), neg.clone(), cp.clone());
            other.set(i, feed, made);
            return other;
        }
    }

    /** Dollars a head and day. */
    double of(double[] kg, Figures made) {
        double dollars = 0;
        double eaten = 0;
        double u = 0;
        double v = 0;
        double protein = 0;
        for (int i = 0; i < kg.length; i++) {
            if (kg[i] > 0) {
                dollars += kg[i] * cost[i];
                eaten += kg[i];
                u += kg[i] * made.nem[i];
                v += kg[i] * made.neg[i];
                protein += kg[i] * made.cp[i] / 100;
            }
        }
        double energy = asked.grows ? asked.neg - (u > 0 ? v * (1 - asked.nem / u) : -asked.nem) : asked.nem - u;
        double crude = Math.max(asked.protein, asked.proteinPercent / 100 * eaten) - protein;
        return dollars + energyPrice * Math.max(0, energy) + proteinPrice * Math.max(0, crude);
    }

    /** kg as fed put out of a feed, a head and day. */
    double putOut(double[] kg, String feed) {
        return index(feed).map(i -> question.offered().get(i).putOut(kg[i])).orElse(0.0);
    }

    /** The feeds that are offered, one of them made of something else, or without it. */
    List<PricedFeed> with(String id, Optional<Feed> made) {
        return question.offered().stream()
                .filter(feed -> made.isPresent() || !feed.feed().id().equals(id))
                .map(feed -> feed.feed().id().equals(id) ? feed.madeOf(made.orElseThrow()) : feed)
                .toList();
    }

    /** As fed, of a feed that is offered; empty where it is not. */
    OptionalDouble kgAtHand(String id) {
        return index(id)
                .map(i -> OptionalDouble.of(question.offered().get(i).kgAtHand()))
                .orElseGet(OptionalDouble::empty);
    }
}
