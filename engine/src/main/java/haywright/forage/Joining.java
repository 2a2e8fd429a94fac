package haywright.forage;

import haywright.workings.Origin;
import haywright.workings.Worked;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    private static final List<List<Analyte>> PARTS = List.of(
            List.of(Analyte.ADF, Analyte.NDF),
            List.of(Analyte.LIGNIN, Analyte.ADF),
            List.of(Analyte.NDICP, Analyte.CP),
            List.of(Analyte.ADICP, Analyte.NDICP),
            List.of(Analyte.ADICP, Analyte.CP));

    static final Set<FeedClass> RANKED_BY_FEED_VALUE =
            EnumSet.of(FeedClass.LEGUME_HAY, FeedClass.GRASS_HAY, FeedClass.MIXED_HAY);

    /** Readings and whose they are, in words. */
    record Told(String where, List<Reading> readings) {}

    private final FeedClass feedClass;
    private final Optional<FeedBook.Row> row;
    private final Optional<Weathered> weathered;
    private final Map<Analyte, Composition.Known> values = new EnumMap<>(Analyte.class);
    private final List<String> notes = new ArrayList<>();
    private @Nullable StatedTdn stated;
    private @Nullable Tdn tdn;

    Joining(FeedClass feedClass, Optional<FeedBook.Row> row, Optional<Weathered> weathered) {
        this.feedClass = feedClass;
        this.row = row;
        this.weathered = weathered;
    }

    LotComposition join(List<Told> newestFirst, Optional<LotEstimate> estimate) {
        for (var told : newestFirst) {
            take(told);
        }
        var measured = Set.copyOf(values.keySet());
        row.ifPresent(book -> fillIn(book, !newestFirst.isEmpty()));
        if (!values.containsKey(Analyte.DM)) {
            lendDryMatter();
        }
        estimate.ifPresent(lot -> new Moving(lot, newestFirst, values, notes).weigh());
        leaveOutWhatCannotBe(measured);
        energy(measured, estimate);
        if (RANKED_BY_FEED_VALUE.contains(feedClass) && measured.containsAll(List.of(Analyte.ADF, Analyte.NDF))) {
            var value = new RelativeFeedValue(new Fibre(number(Analyte.ADF), number(Analyte.NDF)));
            put(Analyte.RFV, value.index(), value);
        }
        return new LotComposition(feedClass, row, new Composition(values), Optional.ofNullable(tdn), estimate, notes);
    }

    private void take(Told told) {
        var checked = ReportCheck.check(feedClass, Optional.empty(), told.readings);
        for (var issue : checked.issues()) {
            if (issue.level() == Issue.Level.E) {
                notes.add("Left out of the %s: %s.".formatted(told.where, issue.words()));
            }
        }
        var sound = checked.sound();
        var typed = new Origin.Typed(told.where);
        boolean needsDryMatter = !values.containsKey(Analyte.DM);
        sound.forEach((analyte, value) -> {
            if (!WORKED_OUT.contains(analyte)) {
                values.putIfAbsent(analyte, new Composition.Known(value, origin(analyte, told, sound, typed)));
            }
        });
        if (sound.containsKey(Analyte.N) && !values.containsKey(Analyte.CP)) {
            var protein = new ProteinFromNitrogen(sound.getOrDefault(Analyte.N, 0.0));
            put(Analyte.CP, protein.percent(), new Traced(protein, Map.of("N", typed)));
        }
        boolean printed = told.readings.stream().anyMatch(r -> r.analyte() == Analyte.DM);
        if (needsDryMatter && !printed && sound.containsKey(Analyte.MOISTURE)) {
            var rest = new Moisture(sound.getOrDefault(Analyte.MOISTURE, 0.0));
            put(Analyte.DM, rest.dryMatter(), new Traced(rest, Map.of("moisture", typed)));
        }
        nitrate(told, sound, typed);
        if (stated == null && sound.containsKey(Analyte.TDN)) {
            stated = new StatedTdn(sound.getOrDefault(Analyte.TDN, 0.0), typed);
        }
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
        if (values.containsKey(Analyte.NO3N)) {
            return;
        }
        if (sound.containsKey(Analyte.NO3N)) {
            values.put(
                    Analyte.NO3N,
                    new Composition.Known(
                            sound.getOrDefault(Analyte.NO3N, 0.0), origin(Analyte.NO3N, told, sound, typed)));
            return;
        }
        Nitrate.strictest(sound).ifPresent(form -> {
            var nitrate = Nitrate.of(form, sound);
            put(Analyte.NO3N, nitrate.no3n(), new Traced(nitrate, Map.of("printed", origin(form, told, sound, typed))));
        });
    }

    private void fillIn(FeedBook.Row book, boolean tested) {
        book.composition().values().forEach((analyte, known) -> {
            if (!WORKED_OUT.contains(analyte)) {
                values.putIfAbsent(analyte, known);
            }
        });
        notes.add((tested ? "What the report does not say is from" : "Not tested: every figure is from")
                + " the feed book: %s".formatted(book.source().cite())
                + (book.basisIsKnown() ? "." : ". The source does not say its basis: take these figures as doubtful."));
    }

    /** Figures of the book, or of the kind, that a report's own rule out. */
    private void leaveOutWhatCannotBe(Set<Analyte> measured) {
        for (var pair : PARTS) {
            var part = pair.get(0);
            var whole = pair.get(1);
            var partly = values.get(part);
            var wholly = values.get(whole);
            if (partly != null && wholly != null && partly.value() > wholly.value()) {
                var dropped = measured.contains(part) ? whole : part;
                if (!measured.contains(dropped)) {
                    values.remove(dropped);
                    notes.add("The feed book's %s is left out: beside the report's figures it cannot be."
                            .formatted(dropped.words()));
                }
            }
        }
    }

    private void lendDryMatter() {
        FeedBook.published().dryMatterRow(feedClass).ifPresent(lender -> {
            var known = lender.composition().values().get(Analyte.DM);
            if (known != null) {
                values.put(Analyte.DM, known);
                notes.add(
                        "Dry matter %s %% is that of %s in the feed book: neither a report nor the lot's own row says."
                                .formatted(Say.number(known.value()), lender.feed()));
            }
        });
    }

    private void byFibre(String what) {
        var usual = AdfEquation.usual(feedClass);
        if (usual.isPresent() && values.containsKey(Analyte.ADF)) {
            var equation = usual.get().equation();
            var fromFibre = new AdfTdn(equation, number(Analyte.ADF));
            if (Analyte.TDN.possible().holds(fromFibre.percent())) {
                tdn = fromFibre;
                notes.add("TDN %s %% is from %s by the line “%s”: %s.%s%s"
                        .formatted(
                                Say.rounded(fromFibre.percent(), 1),
                                what,
                                equation.name(),
                                usual.get().reason(),
                                fromFibre.inRange()
                                        ? ""
                                        : " ADF lies outside 20 to 50 %, where such lines hold: take it as rough.",
                                laboratorys()));
            }
        }
    }

    /** Of a kind without a line, TDN goes with what was measured as its lots hang together. */
    private void byKind(LotEstimate lot) {
        if (lot.prior().index(Analyte.TDN) >= 0) {
            var kind = lot.prior().words();
            var weighed = new Weighed(
                    lot, Analyte.TDN, "how lots of %s lie".formatted(kind), lot.isMoved() ? "moved by the report" : "");
            tdn = new StatedTdn(lot.of(Analyte.TDN).now().mean(), new Origin.Computed(weighed));
            notes.add("TDN %s %% is what lots of %s with such figures usually have, by judgement."
                    .formatted(Say.rounded(tdn.percent(), 1), kind));
        }
    }

    /**
     * TDN as the row prints it. Its own net energies stay as printed beside it: they were not always made from its TDN.
     *
     * @return whether the row prints TDN and both net energies
     */
    private boolean byBook(Map<Analyte, Composition.Known> book) {
        var printed = book.get(Analyte.TDN);
        if (printed == null) {
            return false;
        }
        tdn = new StatedTdn(printed.value(), printed.origin());
        values.put(Analyte.TDN, printed);
        notes.add("TDN %s %% is the feed book's.".formatted(Say.number(printed.value())));
        var maintenance = book.get(Analyte.NEM);
        var gain = book.get(Analyte.NEG);
        if (maintenance == null || gain == null) {
            return false;
        }
        values.put(Analyte.NEM, maintenance);
        values.put(Analyte.NEG, gain);
        return true;
    }

    /**
     * The line from measured ADF; else the laboratory's own; else, once anything was measured, the line from the ADF that
     * goes with it; else what the book prints; else the line from the ADF of the kind.
     */
    private void energy(Set<Analyte> measured, Optional<LotEstimate> estimate) {
        if (measured.contains(Analyte.ADF)) {
            byFibre("the measured ADF");
        }
        if (tdn == null && stated != null) {
            tdn = stated;
            notes.add("TDN %s %% is the laboratory's own, whose equation is not known here."
                    .formatted(Say.number(stated.percent())));
        }
        if (tdn == null && estimate.isPresent() && estimate.get().isMoved()) {
            byFibre("the ADF that goes with the report's figures");
            if (tdn == null) {
                byKind(estimate.get());
            }
        }
        if (tdn == null && row.isPresent() && byBook(row.get().composition().values()) && weathered.isEmpty()) {
            return;
        }
        if (tdn == null && estimate.isPresent()) {
            byFibre("the ADF usual in its kind");
            if (tdn == null) {
                byKind(estimate.get());
            }
        }
        if (tdn != null) {
            weathered.ifPresent(this::weather);
            if (weathered.isPresent() || !values.containsKey(Analyte.TDN)) {
                values.put(Analyte.TDN, new Composition.Known(tdn.percent(), origin(tdn)));
            }
            var energy = new NetEnergy(tdn.percent());
            put(Analyte.NEM, energy.nem(), energy);
            put(Analyte.NEG, energy.neg(), energy);
            energy.cautions().forEach(caution -> notes.add(caution.words()));
        }
    }

    private void weather(Weathered layer) {
        if (tdn != null) {
            tdn = new WeatheredTdn(tdn, layer);
            notes.add(
                    "The outside of its bales weathered since the sample: %s %% of each lost %s units of digestibility in the one trial that says, so TDN is %s points less. Protein and fibre hardly change."
                            .formatted(
                                    Say.rounded(100 * layer.share(), 0),
                                    Say.number(Weathered.UNITS_LOST),
                                    Say.rounded(layer.tdnLost(), 1)));
        }
    }

    private String laboratorys() {
        return stated == null ? "" : " The laboratory prints %s %%.".formatted(Say.number(stated.percent()));
    }

    private Origin origin(Tdn way) {
        return way instanceof StatedTdn said ? said.origin() : new Origin.Computed(new Traced(way, origins()));
    }

    private void put(Analyte analyte, double value, Worked work) {
        values.put(
                analyte,
                new Composition.Known(
                        value, new Origin.Computed(work instanceof Traced ? work : new Traced(work, origins()))));
    }

    /** Where the figures had so far came from, by the symbols the equations use. */
    private Map<String, Origin> origins() {
        var origins = new HashMap<String, Origin>();
        values.forEach((analyte, known) -> origins.put(analyte.name(), known.origin()));
        return Map.copyOf(origins);
    }

    private double number(Analyte analyte) {
        var known = values.get(analyte);
        if (known == null) {
            throw new IllegalStateException(analyte + " is not known");
        }
        return known.value();
    }
}
