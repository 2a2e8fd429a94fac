package haywright.forage.lot;

import haywright.forage.Analyte;
import haywright.forage.Composition;
import haywright.forage.FeedClass;
import haywright.forage.Say;
import haywright.forage.book.FeedBook;
import haywright.forage.book.Prior;
import haywright.forage.book.WidestSpread;
import haywright.forage.energy.AdfEquation;
import haywright.forage.energy.AdfTdn;
import haywright.forage.energy.EnergyChoice;
import haywright.forage.energy.HeldTdn;
import haywright.forage.energy.NetEnergy;
import haywright.forage.energy.StatedTdn;
import haywright.forage.energy.Tdn;
import haywright.forage.energy.WaysToTdn;
import haywright.forage.energy.Weathered;
import haywright.forage.energy.WeatheredTdn;
import haywright.workings.Origin;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** TDN of a lot by the stated rule, and net energy from it; used once. */
final class LotEnergy {
    /**
     * What a report prints that laboratories work out.
     *
     * @param laboratory empty where none is said
     * @param nem beside that TDN; null where it is not printed
     * @param neg likewise
     */
    record Printed(
            String laboratory, StatedTdn tdn, Composition.@Nullable Known nem, Composition.@Nullable Known neg) {}

    /**
     * @param laboratory of the report that prints TDN, else of the newest report
     * @param printed null where no report prints TDN
     * @param adf as it was measured, before anything moved it: a range is asked of the sheet
     * @param picks ways somebody picked, by laboratory
     */
    record Told(String laboratory, @Nullable Printed printed, OptionalDouble adf, Map<String, String> picks) {}

    private final FeedClass feedClass;
    private final Optional<FeedBook.Row> row;
    private final Optional<Weathered> weathered;
    private final Told told;
    private final Making made;
    private @Nullable Tdn tdn;
    private String way = EnergyChoice.KIND;
    private boolean energiesPrinted;

    /** @param made gets TDN, the net energies and the notes on them */
    LotEnergy(FeedClass feedClass, Optional<FeedBook.Row> row, Optional<Weathered> weathered, Told told, Making made) {
        this.feedClass = feedClass;
        this.row = row;
        this.weathered = weathered;
        this.told = told;
        this.made = made;
    }

    /**
     * What was picked; else a line that was read for such feed from measured ADF in its range; else the laboratory's own;
     * else another line from measured ADF; else, where NDF was measured, the line from the ADF that goes with it; else
     * what the book prints; else the line from the ADF of the kind. So a report without fiber leaves TDN where it was.
     */
    EnergyChoice choose(Set<Analyte> measured, Optional<LotEstimate> estimate) {
        var ways = WaysToTdn.fitting(
                feedClass,
                analyte -> measured.contains(analyte) && made.values.containsKey(analyte)
                        ? OptionalDouble.of(made.number(analyte))
                        : OptionalDouble.empty());
        boolean picked = pick(ways);
        var line = AdfEquation.usual(feedClass, Prior.idOf(feedClass, row)).map(AdfEquation.Usual::equation);
        if (tdn == null
                && measured.contains(Analyte.ADF)
                && line.isPresent()
                && line.get().isReadFor(feedClass)) {
            if (told.adf.isPresent() && new AdfTdn(line.get(), told.adf.getAsDouble()).inRange()) {
                byFiber("the measured ADF");
                holdToLaboratory();
            }
        }
        if (tdn == null) {
            byLaboratory("no equation that was read is for this feed with such fiber");
        }
        if (tdn == null && measured.contains(Analyte.ADF)) {
            byFiber("the measured ADF");
        }
        boolean isFiberMeasured = measured.contains(Analyte.ADF) || measured.contains(Analyte.NDF);
        if (tdn == null && estimate.isPresent() && isFiberMeasured) {
            byFiber("the ADF that goes with the measured NDF");
            if (tdn == null) {
                byKind(estimate.get());
            }
        }
        if (tdn == null) {
            byBook();
        }
        if (tdn == null && estimate.isPresent()) {
            byFiber("the ADF usual in its kind");
            if (tdn == null) {
                byKind(estimate.get());
            }
        }
        finish();
        return new EnergyChoice(
                told.laboratory,
                Optional.ofNullable(told.printed).map(Printed::tdn),
                row.map(r -> r.composition().value(Analyte.TDN)).orElse(OptionalDouble.empty()),
                Optional.ofNullable(tdn),
                way,
                picked,
                ways);
    }

    private boolean pick(List<WaysToTdn.Way> ways) {
        var pick = told.picks.entrySet().stream()
                .filter(p -> p.getKey().strip().equalsIgnoreCase(told.laboratory.strip()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
        if (pick.isEmpty()) {
            return false;
        }
        if (pick.equals(EnergyChoice.LABORATORY)) {
            byLaboratory("picked for this lot");
        } else if (pick.equals(EnergyChoice.BOOK)) {
            byBook();
        } else {
            ways.stream().filter(w -> w.id().equals(pick)).findFirst().ifPresent(w -> {
                tdn = w.tdn();
                way = w.id();
                made.notes.add("TDN %s %% is by %s, picked for this lot.%s"
                        .formatted(Say.rounded(w.tdn().percent(), 1), w.name(), laboratorys()));
            });
        }
        if (tdn == null) {
            made.notes.add("The way picked for TDN needs a figure that this lot does not have, so the rule chose.");
        }
        return tdn != null;
    }

    private void byLaboratory(String why) {
        var printed = told.printed;
        if (printed == null) {
            return;
        }
        tdn = printed.tdn;
        way = EnergyChoice.LABORATORY;
        made.notes.add("TDN %s %% is the laboratory's own: %s.".formatted(Say.number(printed.tdn.percent()), why));
        if (printed.nem != null && printed.neg != null && weathered.isEmpty()) {
            made.values.put(Analyte.NEM, printed.nem);
            made.values.put(Analyte.NEG, printed.neg);
            energiesPrinted = true;
        }
    }

    private void byFiber(String what) {
        var usual = AdfEquation.usual(feedClass, Prior.idOf(feedClass, row));
        if (usual.isPresent() && made.values.containsKey(Analyte.ADF)) {
            var equation = usual.get().equation();
            var fromFiber = new AdfTdn(equation, made.number(Analyte.ADF));
            if (Analyte.TDN.possible().holds(fromFiber.percent())) {
                tdn = fromFiber;
                way = equation.id();
                made.notes.add("TDN %s %% is from %s by the line “%s”: %s.%s%s"
                        .formatted(
                                Say.rounded(fromFiber.percent(), 1),
                                what,
                                equation.name(),
                                usual.get().reason(),
                                fromFiber.inRange()
                                        ? ""
                                        : " ADF lies outside 20 to 50 %, where such lines hold: take it as rough.",
                                laboratorys()));
            }
        }
    }

    /** Where its laboratory prints less: {@link HeldTdn}. */
    private void holdToLaboratory() {
        if (tdn instanceof AdfTdn line && told.printed != null && told.printed.tdn.percent() < line.percent()) {
            var held = new HeldTdn(line, told.printed.tdn);
            tdn = held;
            if (held.isHeld()) {
                made.notes.add(
                        "TDN counted is %s %%: no more than %s points, what such a line may be off, over the laboratory's %s %%. Ask the laboratory which equation it uses, or pick one here."
                                .formatted(
                                        Say.rounded(held.percent(), 1),
                                        AdfTdn.RESIDUAL.said(),
                                        Say.number(told.printed.tdn.percent())));
            }
        }
    }

    /** Of a kind without a line, TDN goes with what was measured as its lots go together. */
    private void byKind(LotEstimate lot) {
        int own = lot.prior().index(Analyte.TDN);
        if (own >= 0 && !WidestSpread.isWidest(lot.prior().cells().get(own))) {
            var kind = lot.prior().words();
            var weighed = new Weighed(
                    lot, Analyte.TDN, "how lots of %s lie".formatted(kind), lot.isMoved() ? "moved by the report" : "");
            tdn = new StatedTdn(lot.of(Analyte.TDN).now().mean(), new Origin.Computed(weighed));
            way = EnergyChoice.KIND;
            made.notes.add("TDN %s %% is what lots of %s with such figures usually have, by judgment."
                    .formatted(Say.rounded(tdn.percent(), 1), kind));
        }
    }

    /** TDN as the row prints it. Its own net energies stay as printed beside it: they were not always made from its TDN. */
    private void byBook() {
        var book = row.map(r -> r.composition().values()).orElse(Map.of());
        var printed = book.get(Analyte.TDN);
        if (printed == null) {
            return;
        }
        tdn = new StatedTdn(printed.value(), printed.origin());
        way = EnergyChoice.BOOK;
        made.values.put(Analyte.TDN, printed);
        made.notes.add("TDN %s %% is the feed book's.".formatted(Say.number(printed.value())));
        var maintenance = book.get(Analyte.NEM);
        var gain = book.get(Analyte.NEG);
        if (maintenance != null && gain != null && weathered.isEmpty()) {
            made.values.put(Analyte.NEM, maintenance);
            made.values.put(Analyte.NEG, gain);
            energiesPrinted = true;
        }
    }

    private void finish() {
        if (tdn == null) {
            return;
        }
        weathered.ifPresent(this::weather);
        if (!way.equals(EnergyChoice.BOOK) || weathered.isPresent()) {
            made.values.put(Analyte.TDN, new Composition.Known(tdn.percent(), origin(tdn)));
        }
        if (!energiesPrinted) {
            var energy = new NetEnergy(tdn.percent());
            made.put(Analyte.NEM, energy.nem(), energy);
            made.put(Analyte.NEG, energy.neg(), energy);
            energy.cautions().forEach(caution -> made.notes.add(caution.words()));
        }
    }

    private void weather(Weathered layer) {
        if (tdn != null) {
            tdn = new WeatheredTdn(tdn, layer);
            made.notes.add(
                    "The outside of its bales weathered since the sample: %s %% of each lost %s units of digestibility in the one trial that says, so TDN is %s points less. Protein and fiber hardly change."
                            .formatted(
                                    Say.rounded(100 * layer.share(), 0),
                                    Say.number(Weathered.UNITS_LOST),
                                    Say.rounded(layer.tdnLost(), 1)));
        }
    }

    private String laboratorys() {
        return told.printed == null
                ? ""
                : " The laboratory prints %s %%.".formatted(Say.number(told.printed.tdn.percent()));
    }

    private Origin origin(Tdn found) {
        return found instanceof StatedTdn said ? said.origin() : new Origin.Computed(new Traced(found, made.origins()));
    }
}
