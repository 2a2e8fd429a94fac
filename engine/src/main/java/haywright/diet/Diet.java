package haywright.diet;

import haywright.cattle.AnimalClass;
import haywright.cattle.need.Need;
import haywright.diet.DietRow.Kind;
import haywright.diet.DietRow.Sense;
import haywright.diet.Law.Counted;
import haywright.forage.Analyte;
import haywright.forage.FeedClass;
import haywright.forage.Made;
import haywright.forage.lot.Spread;
import haywright.quantity.Unit;
import haywright.workings.Caution;
import haywright.workings.Source;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * What the feeds at hand must do together for one head and day.
 *
 * @param feeds those that may be used, in the order of every row's coefficients
 * @param rows needs and limits
 * @param growth energy for upkeep and gain together, for cattle that gain; then no row {@code nem} stands alone
 * @param leftOut feeds that may not be used, and why
 * @param options what the ranch chose of it
 */
public record Diet(
        Need need,
        List<Feed> feeds,
        List<DietRow> rows,
        Optional<GrowthEnergy> growth,
        List<LeftOut> leftOut,
        DietOptions options) {
    /** Ounces that nobody weighs. */
    private static final double HAIR = 0.05;

    private static final Source RANCHS_OWN = Source.judgment("the ranch's own wish");

    public Diet {
        feeds = List.copyOf(feeds);
        rows = List.copyOf(rows);
        leftOut = List.copyOf(leftOut);
    }

    public static Diet of(List<Feed> offered, Need need, DietOptions options) {
        var leftOut = new ArrayList<LeftOut>();
        var feeds = new ArrayList<Feed>();
        for (var feed : offered) {
            var out = Admission.reasonToLeaveOut(feed, need, options);
            if (out.isPresent()) {
                leftOut.add(out.get());
            } else {
                feeds.add(feed);
            }
        }
        var build = new Builder(feeds, leftOut, need, options);
        return new Diet(need, feeds, build.rows(), build.growth(), leftOut, options);
    }

    /** The same of other feeds besides, that it leaves out and somebody feeds all the same; still said in {@link #leftOut}. */
    public Diet judging(List<Feed> fed) {
        var all = new ArrayList<>(feeds);
        leftOut.stream()
                .map(LeftOut::feed)
                .filter(f -> fed.contains(f) && Admission.hasEnergyAndProtein(f))
                .forEach(all::add);
        var build = new Builder(all, leftOut, need, options);
        return new Diet(need, all, build.rows(), build.growth(), leftOut, options);
    }

    /** The same feeds for another need. */
    public Diet of(Need other) {
        var build = new Builder(feeds, leftOut, other, options);
        return new Diet(other, feeds, build.rows(), build.growth(), leftOut, options);
    }

    /** Of these rows alone. @param gains whether energy for gain is asked */
    public Diet keeping(Predicate<DietRow> rows, boolean gains) {
        return new Diet(
                need,
                feeds,
                this.rows.stream().filter(rows).toList(),
                growth.filter(energy -> gains),
                leftOut,
                options);
    }

    /** With one row's limit moved. */
    public Diet withLimit(int index, double limit) {
        var moved = new ArrayList<>(rows);
        moved.set(index, rows.get(index).withLimit(limit));
        return new Diet(need, feeds, moved, growth, leftOut, options);
    }

    public DietRow row(String id) {
        return rows.stream()
                .filter(r -> r.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no row " + id));
    }

    /** What a diet of these amounts should be watched for, though no limit is broken. */
    public List<Caution> cautions(double[] kg) {
        double grain = 0;
        double mineral = 0;
        for (int i = 0; i < kg.length; i++) {
            grain += feeds.get(i).feedClass() == FeedClass.GRAIN ? kg[i] : 0;
            mineral += feeds.get(i).isLooseMineral() ? kg[i] : 0;
        }
        var cautions = new ArrayList<Caution>();
        if (need.animals() != AnimalClass.GROWING && grain > PracticeLimits.grainToWatch(need)) {
            cautions.add(new Caution(
                    "So much grain begins to spoil how they digest the forage: watch the manure and what they leave,"
                            + " and step it up over two to three weeks.",
                    PracticeLimits.source("L02b")));
        }
        double ounces = Unit.OUNCE.fromBase(mineral);
        if (ounces > PracticeLimits.value("L23b") + HAIR) {
            cautions.add(new Caution(
                    "%.1f oz of loose mineral a day is more than tags are made for, %.0f oz: few cattle eat so much. Go by your tag; a stronger mineral or another feed serves better."
                            .formatted(ounces, PracticeLimits.value("L23b")),
                    PracticeLimits.source("L23b")));
        }
        for (var checked : checked(kg)) {
            if (checked.verdict() == CheckedNeed.Verdict.SHORT) {
                cautions.add(new Caution(shortOf(checked, DoubleStream.of(kg).sum()), checked.source()));
            }
        }
        return cautions;
    }

    /** Needs that are held against a mix and decide nothing, by what is known of its feeds. */
    public List<CheckedNeed> checked(double[] kg) {
        return CheckedNeed.of(need, feeds, kg);
    }

    private static String shortOf(CheckedNeed checked, double eaten) {
        return checked.id().equals("mg")
                ? "These feeds bring %.0f g of magnesium and %.0f g are needed: the mineral has to bring the rest."
                        .formatted(10 * checked.most() * eaten, 10 * checked.needed() * eaten)
                : "The rumen gets at most %.2f of the degradable protein that it needs: the forage is digested worse. More protein from oilseed meal, alfalfa or distillers grains mends it."
                        .formatted(checked.most() / checked.needed());
    }

    /** What was only found to be less than a limit counts as none. */
    public static double value(Feed feed, Made made, Analyte analyte) {
        var known = feed.composition().values().get(analyte);
        return known == null || known.below() != null ? 0 : made.value(analyte).orElse(0);
    }

    /** How far what a kg of a feed brings may lie. */
    static Spread spread(Feed feed, Analyte analyte) {
        return feed.spread(made -> value(feed, made, analyte));
    }

    private record Builder(List<Feed> feeds, List<LeftOut> leftOut, Need need, DietOptions options) {
        List<DietRow> rows() {
            var rows = new ArrayList<DietRow>();
            rows.addAll(new IntakeRows(feeds, need, options).rows());
            if (growth().isEmpty()) {
                rows.add(needed(
                        "nem",
                        "energy (NEm)",
                        Need::nem,
                        Unit.MEGACALORIE,
                        (f, made) -> value(f, made, Analyte.NEM),
                        Counted.SURE,
                        GrowthEnergy.SOURCE));
                if (options.grainFeedingsADay() > 1 && options.isOn("nem_two_feedings")) {
                    rows.add(new PracticeLimits(feeds, need, options).energyInTwoFeedings());
                }
            }
            rows.add(needed(
                    "cp",
                    "protein",
                    Need::crudeProtein,
                    Unit.KILOGRAM_A_DAY,
                    (f, made) -> value(f, made, Analyte.CP) / 100,
                    Counted.SURE,
                    Source.read("University of Arkansas MP391: crude protein = metabolizable protein / 0.67")));
            if (options.isOn("mp")) {
                rows.addAll(new ProteinRows(feeds, need).rows());
            }
            rows.add(row().of(
                            "cp_floor",
                            Kind.PRACTICE,
                            "protein in the ration, for the rumen",
                            Sense.AT_LEAST,
                            Unit.PERCENT,
                            new Law(
                                    asked -> asked.proteinFloor().percent(),
                                    (f, made) -> value(f, made, Analyte.CP),
                                    (f, made) -> 1,
                                    Counted.SURE),
                            need.proteinFloor().source()));
            var minerals = Source.read(
                    "National Research Council 1996, p. 55: calcium and phosphorus requirements; absorption 0.50 and"
                            + " 0.68 from memory");
            rows.add(needed(
                    "ca",
                    "calcium",
                    Need::calcium,
                    Unit.GRAM_A_DAY,
                    (f, made) -> grams(f, made, Analyte.CA),
                    Counted.SURE,
                    minerals));
            rows.add(needed(
                    "p",
                    "phosphorus",
                    Need::phosphorus,
                    Unit.GRAM_A_DAY,
                    (f, made) -> grams(f, made, Analyte.P),
                    Counted.SURE,
                    minerals));
            if (!options.limitsOff().contains("ca_p")) {
                var ends = PracticeLimits.calciumToPhosphorus();
                var source = PracticeLimits.source("L12");
                rows.add(
                        options.isCareful() || options.shortOfHay()
                                ? calciumToPhosphorus(
                                        "ca_p_low",
                                        Sense.AT_LEAST,
                                        PracticeLimits.value("L12b"),
                                        PracticeLimits.source("L12b"))
                                : calciumToPhosphorus("ca_p_low", Sense.AT_LEAST, ends[0], source));
                rows.add(calciumToPhosphorus("ca_p_high", Sense.AT_MOST, ends[1], source));
            }
            rows.addAll(new PracticeLimits(feeds, need, options).rows());
            for (var limit : options.feedLimits()) {
                feedLimit(limit).ifPresent(rows::add);
            }
            return rows;
        }

        Optional<GrowthEnergy> growth() {
            if (!(need.neg() > 0)) {
                return Optional.empty();
            }
            return Optional.of(GrowthEnergy.expected(
                    need.nem(),
                    need.neg(),
                    each(f -> value(f, f.composition(), Analyte.NEM)),
                    each(f -> value(f, f.composition(), Analyte.NEG))));
        }

        private DietRow calciumToPhosphorus(String id, Sense sense, double limit, Source source) {
            boolean least = sense == Sense.AT_LEAST;
            return row().of(
                            id,
                            Kind.PRACTICE,
                            "calcium to phosphorus",
                            sense,
                            Unit.NONE,
                            new Law(
                                    asked -> limit,
                                    (f, made) -> least ? grams(f, made, Analyte.CA) : mostGrams(f, Analyte.CA),
                                    (f, made) -> least ? mostGrams(f, Analyte.P) : grams(f, made, Analyte.P),
                                    Counted.MEAN),
                            source);
        }

        /** A feed that is left out supplies nothing, so that wanting some of it stands in the way by name. */
        private Optional<DietRow> feedLimit(DietOptions.FeedLimit limit) {
            var feed = Stream.concat(feeds.stream(), leftOut.stream().map(LeftOut::feed))
                    .filter(f -> f.id().equals(limit.feed()))
                    .findFirst();
            return feed.map(fed -> {
                boolean share = limit.per() == DietOptions.FeedLimit.Per.SHARE_PCT;
                boolean weight = limit.per() == DietOptions.FeedLimit.Per.BODY_WEIGHT_PCT;
                return row().of(
                                new RowId.OfFeed(fed.id(), limit.sense()),
                                Kind.CHOICE,
                                fed.name(),
                                limit.sense(),
                                share ? Unit.PERCENT : Unit.KILOGRAM_A_DAY,
                                new Law(
                                        asked -> weight ? limit.amount() / 100 * asked.bodyWeight() : limit.amount(),
                                        (f, made) -> f == fed ? share ? 100 : limit.perKgEaten() : 0,
                                        share ? (f, made) -> 1 : null,
                                        Counted.MEAN),
                                RANCHS_OWN);
            });
        }

        private DietRow needed(
                String id,
                String name,
                ToDoubleFunction<Need> asks,
                Unit unit,
                Law.PerKg perKg,
                Counted counted,
                Source source) {
            return row().of(id, Kind.NEED, name, Sense.AT_LEAST, unit, Law.absolute(asks, perKg, counted), source);
        }

        private Rows row() {
            return new Rows(feeds, need);
        }

        private double[] each(ToDoubleFunction<Feed> value) {
            return feeds.stream().mapToDouble(value).toArray();
        }

        /** Grams of a mineral in a kg of dry matter; one that nobody measured counts as none, which is the safe side. */
        private static double grams(Feed feed, Made made, Analyte analyte) {
            return value(feed, made, analyte) * 10;
        }

        private static double mostGrams(Feed feed, Analyte analyte) {
            return feed.composition().most(analyte).orElse(0) * 10;
        }
    }
}
