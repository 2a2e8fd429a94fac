package haywright.forage;

import haywright.workings.Origin;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** TDN of a lot by the best way there is, and net energy from it; used once. */
final class LotEnergy {
    private final FeedClass feedClass;
    private final Optional<FeedBook.Row> row;
    private final Optional<Weathered> weathered;
    private final @Nullable StatedTdn stated;
    private final Making made;
    private @Nullable Tdn tdn;

    /**
     * @param stated as a report prints it; null where none does
     * @param made gets TDN, the net energies and the notes on them
     */
    LotEnergy(
            FeedClass feedClass,
            Optional<FeedBook.Row> row,
            Optional<Weathered> weathered,
            @Nullable StatedTdn stated,
            Making made) {
        this.feedClass = feedClass;
        this.row = row;
        this.weathered = weathered;
        this.stated = stated;
        this.made = made;
    }

    private void byFibre(String what) {
        var usual = AdfEquation.usual(feedClass);
        if (usual.isPresent() && made.values.containsKey(Analyte.ADF)) {
            var equation = usual.get().equation();
            var fromFibre = new AdfTdn(equation, made.number(Analyte.ADF));
            if (Analyte.TDN.possible().holds(fromFibre.percent())) {
                tdn = fromFibre;
                made.notes.add("TDN %s %% is from %s by the line “%s”: %s.%s%s"
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
            made.notes.add("TDN %s %% is what lots of %s with such figures usually have, by judgement."
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
        made.values.put(Analyte.TDN, printed);
        made.notes.add("TDN %s %% is the feed book's.".formatted(Say.number(printed.value())));
        var maintenance = book.get(Analyte.NEM);
        var gain = book.get(Analyte.NEG);
        if (maintenance == null || gain == null) {
            return false;
        }
        made.values.put(Analyte.NEM, maintenance);
        made.values.put(Analyte.NEG, gain);
        return true;
    }

    /**
     * The line from measured ADF; else the laboratory's own; else, once anything was measured, the line from the ADF that
     * goes with it; else what the book prints; else the line from the ADF of the kind.
     */
    Optional<Tdn> choose(Set<Analyte> measured, Optional<LotEstimate> estimate) {
        if (measured.contains(Analyte.ADF)) {
            byFibre("the measured ADF");
        }
        if (tdn == null && stated != null) {
            tdn = stated;
            made.notes.add("TDN %s %% is the laboratory's own, whose equation is not known here."
                    .formatted(Say.number(stated.percent())));
        }
        if (tdn == null && estimate.isPresent() && estimate.get().isMoved()) {
            byFibre("the ADF that goes with the report's figures");
            if (tdn == null) {
                byKind(estimate.get());
            }
        }
        if (tdn == null && row.isPresent() && byBook(row.get().composition().values()) && weathered.isEmpty()) {
            return Optional.ofNullable(tdn);
        }
        if (tdn == null && estimate.isPresent()) {
            byFibre("the ADF usual in its kind");
            if (tdn == null) {
                byKind(estimate.get());
            }
        }
        if (tdn != null) {
            weathered.ifPresent(this::weather);
            if (weathered.isPresent() || !made.values.containsKey(Analyte.TDN)) {
                made.values.put(Analyte.TDN, new Composition.Known(tdn.percent(), origin(tdn)));
            }
            var energy = new NetEnergy(tdn.percent());
            made.put(Analyte.NEM, energy.nem(), energy);
            made.put(Analyte.NEG, energy.neg(), energy);
            energy.cautions().forEach(caution -> made.notes.add(caution.words()));
        }
        return Optional.ofNullable(tdn);
    }

    private void weather(Weathered layer) {
        if (tdn != null) {
            tdn = new WeatheredTdn(tdn, layer);
            made.notes.add(
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
        return way instanceof StatedTdn said ? said.origin() : new Origin.Computed(new Traced(way, made.origins()));
    }
}
