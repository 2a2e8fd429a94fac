package haywright.app.web.lab;

import haywright.app.web.Form;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.lab.LabReport;
import haywright.outlook.BagCode;
import haywright.outlook.LotTests;
import haywright.outlook.SampledLot;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.ranch.Sampling;
import haywright.sampling.Taken;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the sample code of a report says of the sheet its sample was taken by, in words.
 *
 * @param careful whether something about it is not as it should be
 * @param wrong whether the code cannot be right for this lot, so that it is asked about
 * @param sheet null where it is not on this ranch
 */
public record TakenBy(
        String words,
        boolean careful,
        boolean wrong,
        @Nullable UUID sheet) {
    /** Empty for a laboratory's own number, and where no code is typed. */
    public static Optional<TakenBy> of(Ranch ranch, Lot lot, String typed) {
        return BagCode.read(ranch, typed).map(code -> of(ranch, lot, typed.strip(), code));
    }

    private static TakenBy of(Ranch ranch, Lot lot, String typed, BagCode code) {
        var sheet = code.sheet();
        if (sheet == null) {
            return new TakenBy(
                    "%s is a bag of a sheet that is not on this ranch: deleted since, or another ranch’s."
                            .formatted(typed),
                    true,
                    true,
                    null);
        }
        var id = sheet.id();
        if (code.isMiscopied()) {
            return new TakenBy(
                    "%s is not copied right: its last letter does not fit. Does the bag say %s?"
                            .formatted(typed, code.printed()),
                    true,
                    true,
                    id);
        }
        var of = "the sheet of %s".formatted(Show.date(sheet.made()));
        if (!lot.id().equals(sheet.lot())) {
            return new TakenBy(
                    "%s was taken by %s from %s, not from %s.".formatted(typed, of, sheet.what(), lot.name()),
                    true,
                    true,
                    id);
        }
        var bag = code.composite().isEmpty() ? "" : ", bag " + code.composite();
        return sheet.taken(code.composite())
                .map(taken -> new TakenBy(
                        "Taken by %s%s: %s".formatted(of, bag, really(lot, sheet, code, taken)), false, false, id))
                .orElseGet(() -> new TakenBy(
                        "It is of %s%s, and that sheet has not come back. Enter what was really taken: until then it counts as %d cores."
                                .formatted(of, bag, LotTests.CORES_WITHOUT_SHEET),
                        true,
                        false,
                        id));
    }

    /** "18 of 20 bales, by JR; crude protein is then known to ± 0.6 points" */
    private static String really(Lot lot, Sampling sheet, BagCode code, Taken taken) {
        boolean isHalf = !code.composite().isEmpty();
        int planned = taken.cores().size();
        var sure = SampledLot.of(sheet, lot)
                .reached(taken, isHalf ? 1 : sheet.analyses())
                .map(p -> "; %s is then known to ± %s%s"
                        .formatted(
                                name(sheet.analyte()),
                                Show.significant(p.halfWidth(), 2),
                                p.spread().ofValue() ? " % of its value" : " points"))
                .orElse("");
        return "%d of %s, by %s%s."
                .formatted(
                        taken.units(),
                        planned + " "
                                + (planned == 1
                                        ? sheet.material().unit()
                                        : sheet.material().units()),
                        taken.by(),
                        sure);
    }

    private static String name(String analyte) {
        return Arrays.stream(Analyte.values())
                .filter(a -> a.id().equals(analyte))
                .map(Readings::name)
                .findFirst()
                .map(n -> n.substring(0, 1).toLowerCase(Locale.ROOT) + n.substring(1))
                .orElse(analyte);
    }

    /** A code that cannot be right is asked about once; the same one, confirmed before, is not asked about again. */
    static void ask(Form form, Ranch ranch, Lot lot, @Nullable LabReport before) {
        var typed = form.value(ReportForm.SAMPLE_CODE).strip();
        if (before != null && before.sampleCode().equals(typed)) {
            return;
        }
        of(ranch, lot, typed)
                .filter(TakenBy::wrong)
                .ifPresent(by -> form.doubt(ReportForm.SAMPLE_CODE, "sample-code", by.words()));
    }

    /** What is known of a report before it is typed, from the bag that was sent: code, day, how it was taken. */
    static Map<String, String> known(Ranch ranch, Lot lot, String bag) {
        var known = new LinkedHashMap<>(ReportForm.fresh());
        ranch.reports().values().stream()
                .reduce((before, last) -> last)
                .ifPresent(last -> known.put(ReportForm.LABORATORY.name(), last.laboratory()));
        var code = BagCode.read(ranch, bag).filter(c -> !c.isMiscopied());
        var sheet = code.map(BagCode::sheet).orElse(null);
        if (sheet != null && lot.id().equals(sheet.lot())) {
            known.put(ReportForm.SAMPLE_CODE.name(), bag);
            known.put(ReportForm.HOW.name(), Form.id(LabReport.HowSampled.PLAN));
            var taken = sheet.taken();
            known.put(ReportForm.SAMPLED.name(), taken == null ? "" : Show.date(taken.on()));
        }
        return known;
    }
}
