package haywright.forage.lot;

import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.BasisConversion;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.Moisture;
import haywright.forage.Say;
import haywright.forage.book.FeedBook;
import haywright.forage.energy.Fiber;
import haywright.forage.energy.RelativeFeedValue;
import haywright.forage.energy.StatedTdn;
import haywright.forage.energy.Weathered;
import haywright.forage.hazard.HazardClass;
import haywright.forage.hazard.Nitrate;
import haywright.forage.hazard.NitrateClass;
import haywright.forage.lab.Issue;
import haywright.forage.lab.ProteinFromNitrogen;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.forage.lab.Sheet;
import haywright.workings.Origin;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** One joining of reports and book row into a {@link LotComposition}; used once. */
final class Joining {
    /** What is worked out here and never taken over as it is printed. */
    private static final Set<Analyte> WORKED_OUT = EnumSet.of(
            Analyte.TDN,
            Analyte.DDM,
            Analyte.NEM,
            Analyte.NEG,
            Analyte.NEL,
            Analyte.ME,
            Analyte.DE,
            Analyte.RFV,
            Analyte.RFQ,
            Analyte.ACP,
            Analyte.NFC,
            Analyte.NSC,
            Analyte.DCAD,
            Analyte.MOISTURE,
            Analyte.N,
            Analyte.NO3N,
            Analyte.NO3,
            Analyte.KNO3);

    /** A part and its whole, which a report and the book must not mend together into nonsense. */
    static final List<List<Analyte>> PARTS = List.of(
            List.of(Analyte.ADF, Analyte.NDF),
            List.of(Analyte.LIGNIN, Analyte.ADF),
            List.of(Analyte.NDICP, Analyte.CP),
            List.of(Analyte.ADICP, Analyte.NDICP),
            List.of(Analyte.ADICP, Analyte.CP));

    /** Points of dry matter from which two figures of it are said to differ: judgment. */
    private static final double APART = 0.5;

    static final Set<FeedClass> RANKED_BY_FEED_VALUE =
            EnumSet.of(FeedClass.LEGUME_HAY, FeedClass.GRASS_HAY, FeedClass.MIXED_HAY);

    /** Readings and whose they are, in words and by the laboratory's name. */
    record Told(
            String where,
            String laboratory,
            boolean isByPlan,
            boolean isNitrateByNir,
            List<Reading> readings,
            Map<Analyte, Double> below) {}

    private final FeedClass feedClass;
    private final Optional<FeedBook.Row> row;
    private final Optional<Weathered> weathered;
    private final Making made = new Making();
    private final Map<String, String> picks;
    private final OptionalDouble typedDryMatter;
    private final Set<Analyte> byPlan = EnumSet.noneOf(Analyte.class);
    private LotEnergy.@Nullable Printed printed;

    /**
     * @param picks ways to TDN that somebody picked, by laboratory
     * @param typedDryMatter of the lot as it lies there, %: counts where no report has one
     */
    Joining(
            FeedClass feedClass,
            Optional<FeedBook.Row> row,
            Optional<Weathered> weathered,
            Map<String, String> picks,
            OptionalDouble typedDryMatter) {
        this.picks = picks;
        this.typedDryMatter = typedDryMatter;
        this.feedClass = feedClass;
        this.row = row;
        this.weathered = weathered;
    }

    LotComposition join(List<Told> newestFirst, Optional<LotEstimate> estimate) {
        for (var told : newestFirst) {
            take(told);
        }
        var measured = Set.copyOf(made.values.keySet());
        var adf = made.values.containsKey(Analyte.ADF)
                ? OptionalDouble.of(made.number(Analyte.ADF))
                : OptionalDouble.empty();
        typedDryMatter.ifPresent(this::dryMatterAsTyped);
        row.ifPresent(book -> fillIn(book, !newestFirst.isEmpty()));
        if (!made.values.containsKey(Analyte.DM)) {
            lendDryMatter();
        }
        newestFirst.forEach(told -> told.below.forEach((analyte, limit) -> {
            if (!measured.contains(analyte) && !WORKED_OUT.contains(analyte)) {
                below(analyte, limit, new Origin.Typed(told.where));
            }
        }));
        estimate.ifPresent(lot -> new Moving(lot, newestFirst, made).weigh());
        leaveOutWhatCannotBe(measured);
        var laboratory = printed != null
                ? printed.laboratory()
                : newestFirst.isEmpty() ? "" : newestFirst.get(0).laboratory();
        var energy = new LotEnergy(feedClass, row, weathered, new LotEnergy.Told(laboratory, printed, adf, picks), made)
                .choose(measured, estimate);
        if (RANKED_BY_FEED_VALUE.contains(feedClass) && measured.containsAll(List.of(Analyte.ADF, Analyte.NDF))) {
            var value = new RelativeFeedValue(new Fiber(made.number(Analyte.ADF), made.number(Analyte.NDF)));
            made.put(Analyte.RFV, value.index(), value);
        }
        return new LotComposition(
                feedClass, row, new Composition(made.values, made.expected), energy, estimate, made.notes, made.single);
    }

    private void take(Told told) {
        var checked = ReportCheck.check(feedClass, Optional.empty(), told.readings);
        for (var issue : checked.issues()) {
            if (issue.level() == Issue.Level.E) {
                made.notes.add("Left out of the %s: %s.".formatted(told.where, issue.words()));
            }
        }
        var sound = checked.sound();
        var typed = new Origin.Typed(told.where);
        boolean needsDryMatter = !made.values.containsKey(Analyte.DM);
        sound.forEach((analyte, value) -> {
            if (!WORKED_OUT.contains(analyte)) {
                keep(told, analyte, known(told, analyte, value, origin(analyte, told, sound, typed)));
            }
        });
        if (sound.containsKey(Analyte.N) && !made.values.containsKey(Analyte.CP)) {
            var protein = new ProteinFromNitrogen(sound.getOrDefault(Analyte.N, 0.0));
            made.put(Analyte.CP, protein.percent(), new Traced(protein, Map.of("N", typed)));
        }
        boolean hasDryMatter = told.readings.stream().anyMatch(r -> r.analyte() == Analyte.DM);
        if (needsDryMatter && !hasDryMatter && sound.containsKey(Analyte.MOISTURE)) {
            var rest = new Moisture(sound.getOrDefault(Analyte.MOISTURE, 0.0));
            made.put(Analyte.DM, rest.dryMatter(), new Traced(rest, Map.of("moisture", typed)));
        }
        nitrate(told, sound, typed);
        if (printed == null && sound.containsKey(Analyte.TDN)) {
            printed = new LotEnergy.Printed(
                    told.laboratory,
                    new StatedTdn(sound.getOrDefault(Analyte.TDN, 0.0), typed),
                    energy(Analyte.NEM, told, sound, typed),
                    energy(Analyte.NEG, told, sound, typed));
        }
    }

    /** What was found to be less than a limit is never taken for more, whatever the book has. */
    private void below(Analyte analyte, double limit, Origin typed) {
        var lent = made.values.get(analyte);
        double least = lent == null || lent.below() == null ? limit : Math.min(limit, lent.below());
        double value = lent == null ? least : Math.min(lent.value(), least);
        made.values.put(analyte, new Composition.Known(value, typed, null, null, least));
    }

    private static Composition.@Nullable Known energy(
            Analyte analyte, Told told, Map<Analyte, Double> sound, Origin typed) {
        var value = sound.get(analyte);
        return value == null ? null : new Composition.Known(value, origin(analyte, told, sound, typed));
    }

    /**
     * Of two reports the newer counts; of a danger the higher, since both bags came out of this lot, until a newer sample was
     * taken by a plan and the older was not. A composite of many places does not say that the one place is gone: what
     * was found there stays said.
     */
    private void keep(Told told, Analyte analyte, Composition.Known known) {
        var newer = made.values.putIfAbsent(analyte, known);
        boolean danger =
                analyte == Analyte.NO3N || HazardClass.Hazard.of(analyte).isPresent();
        if (newer != null && danger && known.value() > newer.value() && (told.isByPlan || !byPlan.contains(analyte))) {
            made.values.put(analyte, known);
            made.notes.add(
                    "%s: the higher of two counts, %s of the %s; the newest found %s. Both bags came out of this lot. %s"
                            .formatted(
                                    analyte.words(),
                                    found(analyte, known),
                                    told.where,
                                    found(analyte, newer),
                                    told.isByPlan
                                            ? "The older was sampled by a plan: delete it only if it is not of this hay."
                                            : "It counts until the lot is sampled again by a plan."));
        }
        if (newer != null && danger && isWorse(analyte, known, newer) && made.values.get(analyte) == newer) {
            made.single.merge(analyte, known.value(), Math::max);
            made.notes.add(
                    "%s: one place had %s (%s). The newer sample by a plan found %s of the whole lot, and that counts; the place is still in it. Test bales around it one by one, or delete the older report if it is not of this hay."
                            .formatted(analyte.words(), found(analyte, known), told.where, found(analyte, newer)));
        }
        if (told.isByPlan) {
            byPlan.add(analyte);
        }
    }

    /** In a worse class than what counts: what lies below the first line is no danger, however much higher. */
    private static boolean isWorse(Analyte analyte, Composition.Known found, Composition.Known counted) {
        if (analyte == Analyte.NO3N) {
            return found.value() > Math.max(NitrateClass.safeForPregnant().safeUpTo(), counted.value());
        }
        return HazardClass.Hazard.of(analyte)
                .filter(hazard -> level(hazard, found) > level(hazard, counted))
                .isPresent();
    }

    private static int level(HazardClass.Hazard hazard, Composition.Known known) {
        return HazardClass.of(hazard, known.value()).stream()
                .mapToInt(c -> c.level().ordinal())
                .max()
                .orElse(0);
    }

    private static String found(Analyte analyte, Composition.Known known) {
        return (known.below() == null ? "" : "less than ") + Say.with(known.value(), analyte.unit());
    }

    /** Typed on dry matter, or carried there. */
    private static Origin origin(Analyte analyte, Told told, Map<Analyte, Double> sound, Origin typed) {
        Reading carried = null;
        for (var reading : told.readings) {
            if (reading.analyte() == analyte) {
                if (!analyte.hasBasis() || reading.basis() == Basis.DRY_MATTER) {
                    return typed;
                }
                carried = carried == null ? reading : carried;
            }
        }
        if (carried == null) {
            return typed;
        }
        var conversion = new BasisConversion(
                BasisConversion.Of.CONCENTRATION,
                Sheet.inHouseUnit(carried),
                analyte.unit(),
                carried.basis(),
                Basis.DRY_MATTER,
                sound.getOrDefault(Analyte.DM, 90.0)); // not used from 90 % dry matter, the only way without it
        return new Origin.Computed(new Traced(conversion, Map.of("X", typed, "DM", typed)));
    }

    private void nitrate(Told told, Map<Analyte, Double> sound, Origin typed) {
        if (sound.containsKey(Analyte.NO3N)) {
            nitrate(told, sound.getOrDefault(Analyte.NO3N, 0.0), origin(Analyte.NO3N, told, sound, typed));
            return;
        }
        Nitrate.strictest(sound).ifPresent(form -> {
            var nitrate = Nitrate.of(form, sound);
            nitrate(
                    told,
                    nitrate.no3n(),
                    new Origin.Computed(new Traced(nitrate, Map.of("printed", origin(form, told, sound, typed)))));
        });
    }

    private void nitrate(Told told, double no3n, Origin origin) {
        if (told.isNitrateByNir) {
            boolean isHigh = no3n > NitrateClass.safeForPregnant().safeUpTo();
            made.notes.add(
                    "Nitrate by NIR, %s (%s), %s: it takes chemistry to find it. If the laboratory found it by chemistry, say so on its report."
                            .formatted(
                                    Say.with(no3n, Analyte.NO3N.unit()),
                                    told.where,
                                    isHigh ? "counts until chemistry tells" : "clears nothing"));
            if (!isHigh) {
                return;
            }
        }
        keep(told, Analyte.NO3N, known(told, Analyte.NO3N, no3n, origin));
    }

    /** Of a danger what counts may be the limit that it was found to be under. */
    private static Composition.Known known(Told told, Analyte analyte, double value, Origin origin) {
        var limit = told.below.get(analyte);
        boolean isLimit = limit != null && Math.abs(limit - value) < 1e-6 * limit;
        return new Composition.Known(value, origin, null, null, isLimit ? limit : null);
    }

    private void fillIn(FeedBook.Row book, boolean tested) {
        book.composition().values().forEach((analyte, known) -> {
            if (!WORKED_OUT.contains(analyte)) {
                made.values.putIfAbsent(analyte, known);
            }
        });
        made.notes.add((tested ? "What the report does not say is from" : "Not tested: every figure is from")
                + " the feed book: %s".formatted(book.source().cite())
                + (book.basisIsKnown() ? "." : ". The source does not say its basis: take these figures as doubtful."));
    }

    /** Figures of the book, or of the kind, that a report's own rule out. */
    private void leaveOutWhatCannotBe(Set<Analyte> measured) {
        for (var pair : PARTS) {
            var part = pair.get(0);
            var whole = pair.get(1);
            var partly = made.values.get(part);
            var wholly = made.values.get(whole);
            if (partly != null && wholly != null && partly.value() > wholly.value()) {
                var dropped = measured.contains(part) ? whole : part;
                if (!measured.contains(dropped)) {
                    made.values.remove(dropped);
                    made.notes.add("The feed book's %s is left out: beside the report's figures it cannot be."
                            .formatted(dropped.words()));
                }
            }
        }
    }

    /** A report's is measured and counts first; the weight was worked out with the one that was typed. */
    private void dryMatterAsTyped(double typed) {
        var told = made.values.putIfAbsent(
                Analyte.DM, new Composition.Known(typed, new Origin.Typed("typed where the lot was measured")));
        if (told == null) {
            made.notes.add("Dry matter %s %% is what was typed where the lot was measured: no report says it."
                    .formatted(Say.number(typed)));
        } else if (Math.abs(told.value() - typed) > APART) {
            made.notes.add(
                    "Dry matter: a report says %s %%, and that counts; the weight was worked out with %s %%, typed where"
                                    .formatted(Say.number(told.value()), Say.number(typed))
                            + " the lot was measured. Change it there if the report is right.");
        }
    }

    private void lendDryMatter() {
        FeedBook.published().dryMatterRow(feedClass).ifPresent(lender -> {
            var known = lender.composition().values().get(Analyte.DM);
            if (known != null) {
                made.values.put(Analyte.DM, known);
                made.notes.add(
                        "Dry matter %s %% is that of %s in the feed book: neither a report nor the lot's own row says."
                                .formatted(Say.number(known.value()), lender.feed()));
            }
        });
    }
}
