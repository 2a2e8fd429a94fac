package haywright.outlook;

import haywright.forage.lab.LabReport;
import haywright.ranch.Ranch;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * Which reports on a lot speak for the hay that is there now. Hay is put up every year and bag codes come again, so a
 * report sampled more than {@link #MONTHS} months before the newest is of other hay, unless somebody said that it is the same.
 */
public final class SameHay {
    /** Judgment: longer than one feeding season, shorter than from one cutting to the same one a year later. */
    public static final int MONTHS = 9;

    /** How every {@link #confirmation} begins. */
    public static final String CONFIRMED = "same-hay-";

    private SameHay() {}

    /** What is confirmed on a report that is of the same hay as another. */
    public static String confirmation(LabReport other) {
        return CONFIRMED + other.id();
    }

    /** Oldest first. */
    public static List<LabReport> counted(Ranch ranch, UUID lot) {
        var all = ranch.reportsOn(lot);
        var newest = all.stream()
                .filter(report -> day(report).isPresent())
                .reduce((a, b) -> day(b).orElseThrow().isBefore(day(a).orElseThrow()) ? a : b);
        return newest.isEmpty()
                ? all
                : all.stream()
                        .filter(report -> !isApart(report, newest.get()) || isSaidToBeTheSame(report, newest.get()))
                        .toList();
    }

    /** Whether one was sampled so long before the other that it is asked whether the hay is the same. */
    public static boolean isApart(LabReport one, LabReport other) {
        return isApart(day(one), day(other));
    }

    /** As {@link #isApart(LabReport, LabReport)}, of a report that is not whole yet. @param days sampled, reported; may be empty */
    public static boolean isApart(LabReport one, Stream<Optional<LocalDate>> days) {
        return isApart(day(one), days.flatMap(Optional::stream).findFirst());
    }

    private static boolean isApart(Optional<LocalDate> one, Optional<LocalDate> other) {
        return one.isPresent()
                && other.isPresent()
                && (one.get().plusMonths(MONTHS).isBefore(other.get())
                        || other.get().plusMonths(MONTHS).isBefore(one.get()));
    }

    private static boolean isSaidToBeTheSame(LabReport one, LabReport other) {
        return one.confirmed().contains(confirmation(other))
                || other.confirmed().contains(confirmation(one));
    }

    private static Optional<LocalDate> day(LabReport report) {
        return Optional.ofNullable(report.sampled()).or(() -> Optional.ofNullable(report.reported()));
    }
}
