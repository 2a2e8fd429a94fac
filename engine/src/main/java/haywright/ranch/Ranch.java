package haywright.ranch;

import haywright.cattle.Group;
import haywright.forage.LabReport;
import haywright.weather.StationWinters;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * One ranch and one winter.
 *
 * @param settings choices that hold for the whole ranch
 * @param wishes what the ranch wants of a group's ration, by group id
 * @param letters what was written on a group's feed letter, by group id
 * @param attachments files kept beside the document
 * @param samplings field sheets that were made, and what came back on them
 * @param winters of the nearest station; null where no record was read in
 * @param waters what the cattle drink from
 */
public record Ranch(
        UUID id,
        String name,
        Settings settings,
        Map<UUID, Group> groups,
        Map<UUID, Lot> lots,
        Map<UUID, LabReport> reports,
        Map<UUID, Field> fields,
        Map<UUID, FeedForSale> feedsForSale,
        Outfit outfit,
        Map<UUID, FedNow> fedNow,
        Map<UUID, Wishes> wishes,
        LastWinter lastWinter,
        Map<UUID, Letter> letters,
        Map<UUID, Attachment> attachments,
        Map<UUID, Sampling> samplings,
        @Nullable StationWinters winters,
        Map<UUID, WaterSource> waters) {
    public Ranch {
        waters = kept(waters);
        groups = kept(groups);
        lots = kept(lots);
        reports = kept(reports);
        fields = kept(fields);
        feedsForSale = kept(feedsForSale);
        fedNow = kept(fedNow);
        wishes = kept(wishes);
        letters = kept(letters);
        attachments = kept(attachments);
        samplings = kept(samplings);
        Names.require("name", name, "a ranch");
        Refused.unlessEmpty(Strays.of(lots, groups, fields, feedsForSale, reports, fedNow, wishes, letters));
    }

    /** Unmodifiable, in the order given. */
    private static <T> Map<UUID, T> kept(Map<UUID, T> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    public static Ranch empty(UUID id, String name) {
        return new Ranch(
                id,
                name,
                Settings.start(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of(),
                Outfit.NOT_SAID,
                Map.of(),
                Map.of(),
                LastWinter.NOT_SAID,
                Map.of(),
                Map.of(),
                Map.of(),
                null,
                Map.of());
    }

    // What a ranch looks like after one change: the entity replaces the one with its id, or is added at the end.

    public Ranch withName(String name) {
        return copy(name, settings, groups, lots, reports, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(Settings settings) {
        return copy(name, settings, groups, lots, reports, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(Outfit outfit) {
        return copy(name, settings, groups, lots, reports, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(LastWinter lastWinter) {
        return copy(name, settings, groups, lots, reports, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(Group group) {
        var changed = put(groups, group.id(), group);
        return copy(name, settings, changed, lots, reports, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(Lot lot) {
        var changed = put(lots, lot.id(), lot);
        return copy(
                name, settings, groups, changed, reports, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(LabReport report) {
        var changed = put(reports, report.id(), report);
        return copy(name, settings, groups, lots, changed, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(FeedForSale feed) {
        var changed = put(feedsForSale, feed.id(), feed);
        return copy(name, settings, groups, lots, reports, changed, outfit, fedNow, wishes, lastWinter, letters);
    }

    public Ranch with(FedNow fed) {
        var changed = put(fedNow, fed.group(), fed);
        return copy(name, settings, groups, lots, reports, feedsForSale, outfit, changed, wishes, lastWinter, letters);
    }

    public Ranch with(Wishes wanted) {
        var changed = put(wishes, wanted.group(), wanted);
        return copy(name, settings, groups, lots, reports, feedsForSale, outfit, fedNow, changed, lastWinter, letters);
    }

    public Ranch with(Letter letter) {
        var changed = put(letters, letter.group(), letter);
        return copy(name, settings, groups, lots, reports, feedsForSale, outfit, fedNow, wishes, lastWinter, changed);
    }

    public Ranch with(Attachment attachment) {
        return new Ranch(
                id,
                name,
                settings,
                groups,
                lots,
                reports,
                fields,
                feedsForSale,
                outfit,
                fedNow,
                wishes,
                lastWinter,
                letters,
                put(attachments, attachment.id(), attachment),
                samplings,
                winters,
                waters);
    }

    /** With the usual weather of a place, and the winters of its station; or without. */
    public Ranch withWeather(@Nullable RanchWeather weather, @Nullable StationWinters winters) {
        return new Ranch(
                id,
                name,
                settings.with(weather),
                groups,
                lots,
                reports,
                fields,
                feedsForSale,
                outfit,
                fedNow,
                wishes,
                lastWinter,
                letters,
                attachments,
                samplings,
                winters,
                waters);
    }

    public Ranch with(WaterSource water) {
        return withWaters(put(waters, water.id(), water));
    }

    public Ranch withoutWater(UUID id) {
        return withWaters(without(waters, id));
    }

    private Ranch withWaters(Map<UUID, WaterSource> waters) {
        return new Ranch(
                id,
                name,
                settings,
                groups,
                lots,
                reports,
                fields,
                feedsForSale,
                outfit,
                fedNow,
                wishes,
                lastWinter,
                letters,
                attachments,
                samplings,
                winters,
                waters);
    }

    public Ranch with(Field field) {
        return withSamplings(put(fields, field.id(), field), samplings);
    }

    public Ranch withoutField(UUID id) {
        return withSamplings(without(fields, id), samplings);
    }

    public Ranch with(Sampling sampling) {
        return withSamplings(fields, put(samplings, sampling.id(), sampling));
    }

    public Ranch withoutSampling(UUID id) {
        return withSamplings(fields, without(samplings, id));
    }

    private Ranch withSamplings(Map<UUID, Field> fields, Map<UUID, Sampling> samplings) {
        return new Ranch(
                id,
                name,
                settings,
                groups,
                lots,
                reports,
                fields,
                feedsForSale,
                outfit,
                fedNow,
                wishes,
                lastWinter,
                letters,
                attachments,
                samplings,
                winters,
                waters);
    }

    /** The group goes, and with it what it is fed now and its letter. */
    public Ranch withoutGroup(UUID id) {
        return copy(
                name,
                settings,
                without(groups, id),
                lots,
                reports,
                feedsForSale,
                outfit,
                without(fedNow, id),
                without(wishes, id),
                lastWinter,
                without(letters, id));
    }

    /** The lot goes, and with it its reports and what is fed of it now. */
    public Ranch withoutLot(UUID id) {
        var left = new LinkedHashMap<>(reports);
        left.values().removeIf(report -> report.lot().equals(id));
        return copy(
                name,
                settings,
                groups,
                without(lots, id),
                left,
                feedsForSale,
                outfit,
                fedWithout(id),
                wishesWithout(id),
                lastWinter,
                letters);
    }

    public Ranch withoutReport(UUID id) {
        var left = without(reports, id);
        return copy(name, settings, groups, lots, left, feedsForSale, outfit, fedNow, wishes, lastWinter, letters);
    }

    /** The feed goes, and with it what is fed of it now. */
    public Ranch withoutFeedForSale(UUID id) {
        var left = without(feedsForSale, id);
        return copy(
                name,
                settings,
                groups,
                lots,
                reports,
                left,
                outfit,
                fedWithout(id),
                wishesWithout(id),
                lastWinter,
                letters);
    }

    private Map<UUID, FedNow> fedWithout(UUID feed) {
        var left = new LinkedHashMap<>(fedNow);
        left.replaceAll((group, fed) -> new FedNow(group, without(fed.amounts(), feed)));
        return left;
    }

    private Map<UUID, Wishes> wishesWithout(UUID feed) {
        var left = new LinkedHashMap<>(wishes);
        left.replaceAll((group, wanted) -> new Wishes(
                group,
                wanted.feeds().stream().filter(w -> !w.feed().equals(feed)).toList(),
                wanted.limitsOff()));
        return left;
    }

    private Ranch copy(
            String name,
            Settings settings,
            Map<UUID, Group> groups,
            Map<UUID, Lot> lots,
            Map<UUID, LabReport> reports,
            Map<UUID, FeedForSale> feedsForSale,
            Outfit outfit,
            Map<UUID, FedNow> fedNow,
            Map<UUID, Wishes> wishes,
            LastWinter lastWinter,
            Map<UUID, Letter> letters) {
        return new Ranch(
                id,
                name,
                settings,
                groups,
                lots,
                reports,
                fields,
                feedsForSale,
                outfit,
                fedNow,
                wishes,
                lastWinter,
                letters,
                attachments,
                samplings,
                winters,
                waters);
    }

    private static <T> Map<UUID, T> put(Map<UUID, T> map, UUID id, T entity) {
        var changed = new LinkedHashMap<>(map);
        changed.put(id, entity);
        return changed;
    }

    private static <T> Map<UUID, T> without(Map<UUID, T> map, UUID id) {
        var left = new LinkedHashMap<>(map);
        left.remove(id);
        return left;
    }

    /** The field sheets of a lot, oldest first. A sheet outlives its lot: what was taken was taken. */
    public List<Sampling> samplingsOf(UUID lot) {
        return samplings.values().stream().filter(s -> lot.equals(s.lot())).toList();
    }

    /** The reports on a lot, oldest first. */
    public List<LabReport> reportsOn(UUID lot) {
        return reports.values().stream()
                .filter(r -> r.lot().equals(lot))
                .sorted((a, b) -> {
                    var left = a.reported() == null ? LocalDate.MIN : a.reported();
                    var right = b.reported() == null ? LocalDate.MIN : b.reported();
                    return left.compareTo(right);
                })
                .toList();
    }

    public int head() {
        return groups.values().stream().mapToInt(Group::head).sum();
    }
}
