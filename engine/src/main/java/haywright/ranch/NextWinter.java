package haywright.ranch;

import haywright.cattle.herd.Group.CalvingWeek;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A ranch carried from one winter into the next. The place, the outfit, whom to call, the fields, the water, the feeds to
 * buy and the groups with their pens go along; calving, weaning and turnout move by whole years until they are ahead.
 * Weights and scores keep the day they were taken, so they show as old. Lots, reports, letters and what was fed belong to
 * the winter that is over and stay with it.
 */
public final class NextWinter {
    private NextWinter() {}

    /** @param id of the new ranch; {@code last} stays as it is */
    public static Ranch of(Ranch last, UUID id, String name, LocalDate today) {
        var settings = last.settings();
        var carried = Ranch.empty(id, name)
                .with(new Settings(
                        settings.invented(),
                        null,
                        settings.system(),
                        settings.adviser(),
                        settings.feedingLossPercent(),
                        ahead(settings.turnout(), today),
                        settings.weather(),
                        settings.herdFactor(),
                        settings.preset(),
                        settings.findPrice()))
                .withWeather(settings.weather(), last.winters())
                .with(last.outfit());
        for (var group : last.groups().values()) {
            carried = carried.with(group.dated(
                    ahead(group.calving(), today), ahead(group.weaning(), today), ahead(group.turnout(), today)));
        }
        for (var pen : last.pens().values()) {
            carried = carried.with(pen);
        }
        var contacts = last.contacts();
        if (contacts != null) {
            carried = carried.with(contacts);
        }
        for (var field : last.fields().values()) {
            carried = carried.with(field);
        }
        for (var feed : last.feedsForSale().values()) {
            carried = carried.with(feed);
        }
        for (var water : last.waters().values()) {
            carried = carried.with(water);
        }
        return carried;
    }

    /** The whole season moves together, so that its weeks stay in order. */
    private static List<CalvingWeek> ahead(List<CalvingWeek> calving, LocalDate today) {
        var last = calving.stream().map(CalvingWeek::begins).max(Comparator.naturalOrder());
        if (last.isEmpty()) {
            return calving;
        }
        int years = years(last.get(), today);
        return calving.stream()
                .map(week -> new CalvingWeek(week.begins().plusYears(years), week.head()))
                .toList();
    }

    private static @Nullable LocalDate ahead(@Nullable LocalDate day, LocalDate today) {
        return day == null ? null : day.plusYears(years(day, today));
    }

    private static int years(LocalDate day, LocalDate today) {
        return (int) Stream.iterate(0, n -> n + 1)
                .filter(n -> !day.plusYears(n).isBefore(today))
                .findFirst()
                .orElseThrow();
    }
}
