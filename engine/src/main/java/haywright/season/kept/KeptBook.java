package haywright.season.kept;

import haywright.season.WinterBook;
import haywright.season.given.Season;
import haywright.season.play.Played;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A winter book as it is kept.
 *
 * @param hash of all that it was made from
 * @param day it was made for
 * @param grass the turnout date
 * @param lasts winters of 20 in which feed lasted; null where no winter is known, and then what is counted below is null too
 * @param low of winters of 20, nine times in ten it lies from this to {@code high}
 * @param draws winters that were played, {@code lasted} those in which feed lasted, of so many {@code years}
 * @param isWhole whether all was done that was asked for
 * @param hardness that what could be done was priced by; null in a book of an earlier build
 * @param begins the first day of each week
 * @param lines hay and silage on hand in each winter that was played
 * @param winters what happened in each winter of the record, once
 */
public record KeptBook(
        String hash,
        LocalDate day,
        LocalDate grass,
        KeptPlan plan,
        @Nullable Integer lasts,
        @Nullable Double low,
        @Nullable Double high,
        int draws,
        int lasted,
        int years,
        boolean isWhole,
        @Nullable Double hardness,
        WinterBook.@Nullable Cost cost,
        List<ShortWinter> shortWinters,
        List<WinterBook.RunsOut> runsOut,
        List<Kind> kinds,
        List<Beside> besides,
        List<WinterBook.Doubt> doubts,
        List<WinterBook.Alternative> alternatives,
        List<LocalDate> begins,
        List<Line> lines,
        List<WinterStory> winters) {
    public KeptBook {
        shortWinters = List.copyOf(shortWinters);
        runsOut = List.copyOf(runsOut);
        kinds = List.copyOf(kinds);
        besides = List.copyOf(besides);
        doubts = List.copyOf(doubts);
        alternatives = List.copyOf(alternatives);
        begins = List.copyOf(begins);
        lines = List.copyOf(lines);
        winters = List.copyOf(winters);
    }

    /** @param from null where only condition was lost */
    public record ShortWinter(
            String winter,
            int draws,
            int lasted,
            double tons,
            @Nullable LocalDate from) {}

    /** @param score null where none calve ahead */
    public record Kind(
            String what,
            String winter,
            double cost,
            double bought,
            double tonsShort,
            double tonsLeft,
            @Nullable Double score) {}

    /**
     * @param lasts winters of 20; null where that is not counted. @param tonsShort the same
     * @param cost by the accounting of a plan, needs missed counted at their prices
     * @param bought dollars for feed, hay that was found included; null where it is not counted, and in a book of an earlier build
     */
    public record Beside(
            String what,
            @Nullable Double lasts,
            double cost,
            @Nullable Double bought,
            @Nullable Double tonsShort) {}

    /**
     * Hay and silage that may be fed, on hand at the start of each week.
     *
     * @param winter {@code 1996-97}
     * @param kg as fed
     */
    public record Line(String winter, boolean lasted, List<Double> kg) {
        public static Line of(Played played, Season season) {
            var forage = forage(season);
            return new Line(
                    season.record().winters().get(played.winter()).words(),
                    played.lasted(),
                    played.weeks().stream()
                            .map(week -> (double) Math.round(Arrays.stream(forage)
                                    .mapToDouble(f -> week.known().stock()[f])
                                    .sum()))
                            .toList());
        }
    }

    private static int[] forage(Season season) {
        return IntStream.range(0, season.feeds().size())
                .filter(f -> f != season.emergency() && season.feeds().get(f).isForage() && season.mayBeFed(f))
                .toArray();
    }

    /** @param lines of every winter as it was played. @param winters of each winter of the record once */
    public static KeptBook of(
            WinterBook book, Season season, KeptPlan plan, List<Line> lines, List<WinterStory> winters) {
        return new KeptBook(
                book.hash(),
                book.today(),
                book.grass(),
                plan,
                boxed(book.lasts()),
                known(book.low()),
                known(book.high()),
                book.draws(),
                book.lasted(),
                book.years(),
                book.isWhole(),
                book.policy().middle(),
                book.draws() == 0 ? null : book.cost(),
                book.shortWinters().stream()
                        .map(one -> new ShortWinter(
                                one.winter(),
                                one.draws(),
                                one.lasted(),
                                one.tons(),
                                one.from().orElse(null)))
                        .toList(),
                book.runsOut(),
                book.kinds().stream()
                        .map(one -> new Kind(
                                one.what(),
                                one.winter(),
                                one.cost(),
                                one.bought(),
                                one.tonsShort(),
                                one.tonsLeft(),
                                known(one.score())))
                        .toList(),
                book.besides().stream()
                        .map(one -> new Beside(
                                one.what(),
                                known(one.lasts()),
                                one.cost(),
                                known(one.bought()),
                                known(one.tonsShort())))
                        .toList(),
                book.doubts(),
                book.alternatives(),
                IntStream.range(0, season.weeks()).mapToObj(season::begins).toList(),
                lines.stream().sorted(Comparator.comparing(Line::winter)).toList(),
                winters.stream()
                        .sorted(Comparator.comparing(WinterStory::winter))
                        .toList());
    }

    private static @Nullable Integer boxed(OptionalInt value) {
        return value.isPresent() ? (Integer) value.getAsInt() : null;
    }

    private static @Nullable Double known(double value) {
        return Double.isNaN(value) ? null : (Double) value;
    }

    /** The winters that ran out of hay, as they came. */
    public List<ShortWinter> hayShort() {
        return shortWinters.stream().filter(one -> one.from != null).toList();
    }

    /** The earliest day of all winters that are named, from which one ran out of hay before turnout; empty where none did. */
    public Optional<LocalDate> shortFrom() {
        return Stream.concat(
                        shortWinters.stream().map(ShortWinter::from),
                        winters.stream().map(WinterStory::shortFrom))
                .flatMap(Stream::ofNullable)
                .filter(from -> from.isBefore(grass))
                .min(LocalDate::compareTo);
    }
}
