package haywright.app.web.lab;

import haywright.app.web.Form;
import haywright.app.words.Parse;
import haywright.app.words.Show;
import haywright.forage.lab.LabReport;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the ranch has already of a sample that is brought in. It is the same report only where code, laboratory, day and
 * every figure agree, or where it came out of the same file and holds no other figure; bag codes come again every year.
 *
 * @param kept the lot of that very report; null where there is none
 * @param like a report under the same code that this one may replace; null where there is none, or where the days say
 *     that it is of another sample and the figures differ
 */
record Earlier(@Nullable Lot kept, @Nullable LabReport like) {
    private static final Earlier NOTHING = new Earlier(null, null);

    /** @param isOnlyOne whether no other sample of the file has its code */
    static Earlier of(Ranch ranch, Form form, Map<String, String> typed, boolean isOnlyOne) {
        var values = new LinkedHashMap<>(ReportForm.fresh());
        values.putAll(typed);
        var read = Form.of("", values);
        var code = key(typed.getOrDefault(ReportForm.SAMPLE_CODE.name(), ""));
        var laboratory = key(typed.getOrDefault(ReportForm.LABORATORY.name(), ""));
        var sampled = day(typed.getOrDefault(ReportForm.SAMPLED.name(), ""));
        var printed = FigureMethods.read(read, Printed.read(read, Printed.NOTHING));
        var file = Original.of(form).map(Original::sha256).orElse("");
        LabReport like = null;
        for (var report : ranch.reports().values()) {
            if (!key(report.sampleCode()).equals(code)
                    || !key(report.laboratory()).equals(laboratory)) {
                continue;
            }
            boolean isSameDay = Optional.ofNullable(report.sampled()).equals(sampled);
            boolean isSameFigures = isSame(printed, Printed.of(report));
            boolean isOfThisFile = isOnlyOne && isOf(ranch, report.id(), file);
            // of what came in somebody may have left figures out, but not kept other ones
            boolean isNameless = code.isEmpty() && laboratory.isEmpty() && sampled.isEmpty();
            boolean isSame = isSameDay && isSameFigures && !isNameless
                    || isOfThisFile && printed.readings().containsAll(report.readings());
            var lot = ranch.lots().get(report.lot());
            if (isSame && lot != null) {
                return new Earlier(lot, null);
            }
            // where neither has a code, nothing but the file itself can tell
            if (isOfThisFile
                    || !code.isEmpty() && (isSameFigures || !isAnotherSample(report.sampled(), sampled.orElse(null)))) {
                like = report;
            }
        }
        return like == null ? NOTHING : new Earlier(null, like);
    }

    /** Both days are known, and they differ: another sample, whatever its code. */
    static boolean isAnotherSample(@Nullable LocalDate one, @Nullable LocalDate other) {
        return one != null && other != null && !one.equals(other);
    }

    /** Both laboratories are known, and they differ: each has codes of its own. */
    static boolean isAnother(String one, String other) {
        return !one.isBlank() && !other.isBlank() && !key(one).equals(key(other));
    }

    private static boolean isSame(Printed one, Printed other) {
        return new HashSet<>(one.readings()).equals(new HashSet<>(other.readings()))
                && new HashSet<>(one.notMeasured()).equals(new HashSet<>(other.notMeasured()));
    }

    private static boolean isOf(Ranch ranch, UUID report, String file) {
        return ranch.attachments().values().stream()
                .anyMatch(one -> one.about().equals(report) && one.sha256().equals(file));
    }

    static Optional<LocalDate> day(String typed) {
        try {
            return typed.isBlank() ? Optional.empty() : Optional.of(Parse.date("", typed));
        } catch (Refused e) {
            return Optional.empty();
        }
    }

    static String key(String words) {
        return words.strip().toUpperCase(Locale.ROOT).replaceAll("\\s+", " ");
    }

    /** "the one sampled Sep 12, 2025, on Creek stack" */
    static String words(LabReport report, Ranch ranch) {
        var lot = ranch.lots().get(report.lot());
        var days = List.of(
                report.sampled() == null ? "" : ", sampled " + Show.date(report.sampled()),
                report.reported() == null ? "" : ", reported " + Show.date(report.reported()),
                lot == null ? "" : ", on " + lot.name());
        return (report.sampleCode().isBlank() ? "the one out of this file" : "the one under this code")
                + String.join("", days);
    }
}
