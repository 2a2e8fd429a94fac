package haywright.ranch;

import haywright.cattle.herd.Group;
import haywright.forage.lab.LabReport;
import haywright.quantity.Preset;
import haywright.weather.KeptWinter;
import haywright.weather.MeanWinter;
import haywright.weather.StationWinters;
import haywright.workings.Names;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Predicate;
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
 * @param energyPicks which TDN somebody wants used, by lot
 * @param contacts whom the person who feeds can call; null until somebody says
 * @param pens where a group is, by group id
 * @param signed feed letters as they were signed
 * @param weeks what was fed, counted and scored, week by week
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
        Map<UUID, WaterSource> waters,
        Map<UUID, EnergyPicks> energyPicks,
        @Nullable Contacts contacts,
        Map<UUID, Pen> pens,
        Map<UUID, SignedLetter> signed,
        Map<UUID, FedWeek> weeks) {
    public Ranch {
        pens = kept(pens);
        signed = kept(signed);
        weeks = kept(weeks);
        energyPicks = kept(energyPicks);
        waters = kept(waters);
        groups = kept(groups);
        lots = kept(lots);
        reports = new ByLot<>(reports, LabReport::lot, Comparator.comparing(Ranch::reported));
        fields = kept(fields);
        feedsForSale = kept(feedsForSale);
        fedNow = kept(fedNow);
        wishes = kept(wishes);
        letters = kept(letters);
        attachments = kept(attachments);
        samplings = new ByLot<>(samplings, Sampling::lot, (a, b) -> 0);
        Names.require("name", name, "a ranch");
        Refused.unlessEmpty(
                Strays.of(lots, groups, fields, feedsForSale, reports, fedNow, wishes, letters, energyPicks, pens));
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
                Map.of(),
                Map.of(),
                null,
                Map.of(),
                Map.of(),
                Map.of());
    }

    // What a ranch looks like after one change: the entity replaces the one with its id, or is added at the end.

    public Ranch withName(String name) {
        return changed(parts -> parts.name = name);
    }

    public Ranch with(Settings settings) {
        return changed(parts -> parts.settings = settings);
    }

    public Ranch with(Outfit outfit) {
        return changed(parts -> parts.outfit = outfit);
    }

    public Ranch with(LastWinter lastWinter) {
        return changed(parts -> parts.lastWinter = lastWinter);
    }

    /**
     * At a place that was found by its name: one in Canada is read in its units, where nobody chose others and no place was
     * said before.
     */
    public Ranch at(RanchWeather weather) {
        var found = weather.found();
        boolean isNew = settings.preset() == null && settings.weather() == null;
        return (isNew && found != null && found.isInCanada() ? with(settings.withPreset(Preset.WESTERN_CANADA)) : this)
                .withWeather(weather, null);
    }

    /** With the usual weather of a place, and the winters of its station; or without. */
    public Ranch withWeather(@Nullable RanchWeather weather, @Nullable StationWinters winters) {
        return changed(parts -> {
            parts.settings = settings.with(weather);
            parts.winters = winters;
        });
    }

    public Ranch with(Group group) {
        return changed(parts -> parts.groups = put(groups, group.id(), group));
    }

    public Ranch with(Lot lot) {
        return changed(parts -> parts.lots = put(lots, lot.id(), lot));
    }

    public Ranch with(LabReport report) {
        return changed(parts -> parts.reports = put(reports, report.id(), report));
    }

    public Ranch with(Field field) {
        return changed(parts -> parts.fields = put(fields, field.id(), field));
    }

    public Ranch with(FeedForSale feed) {
        return changed(parts -> parts.feedsForSale = put(feedsForSale, feed.id(), feed));
    }

    public Ranch with(FedNow fed) {
        return changed(parts -> parts.fedNow = put(fedNow, fed.group(), fed));
    }

    public Ranch with(Wishes wanted) {
        return changed(parts -> parts.wishes = put(wishes, wanted.group(), wanted));
    }

    public Ranch with(Letter letter) {
        return changed(parts -> parts.letters = put(letters, letter.group(), letter));
    }

    public Ranch with(SignedLetter letter) {
        return changed(parts -> parts.signed = put(signed, letter.id(), letter));
    }

    public Ranch with(FedWeek week) {
        return changed(parts -> parts.weeks = put(weeks, week.id(), week));
    }

    public Ranch with(Contacts said) {
        return changed(parts -> parts.contacts = said);
    }

    public Ranch with(Pen pen) {
        return changed(parts -> parts.pens = put(pens, pen.group(), pen));
    }

    /** Nothing where nobody said. */
    public Pen pen(UUID group) {
        return pens.getOrDefault(group, Pen.notSaid(group));
    }

    public Ranch with(Attachment attachment) {
        return changed(parts -> parts.attachments = put(attachments, attachment.id(), attachment));
    }

    public Ranch withoutAttachment(UUID id) {
        return changed(parts -> parts.attachments = without(attachments, id));
    }

    public Ranch with(Sampling sampling) {
        return changed(parts -> parts.samplings = put(samplings, sampling.id(), sampling));
    }

    public Ranch with(WaterSource water) {
        return changed(parts -> parts.waters = put(waters, water.id(), water));
    }

    public Ranch with(EnergyPicks picks) {
        return changed(parts -> parts.energyPicks =
                picks.ways().isEmpty() ? without(energyPicks, picks.lot()) : put(energyPicks, picks.lot(), picks));
    }

    public EnergyPicks energyPicks(UUID lot) {
        return energyPicks.getOrDefault(lot, new EnergyPicks(lot, Map.of()));
    }

    /** The group goes, and with it what it is fed now and its letter. */
    public Ranch withoutGroup(UUID id) {
        return changed(parts -> {
            parts.groups = without(groups, id);
            parts.fedNow = without(fedNow, id);
            parts.wishes = without(wishes, id);
            parts.letters = without(letters, id);
            parts.pens = without(pens, id);
        });
    }

    /** The lot goes, and with it its photos, its reports, their files and what is fed of it now. */
    public Ranch withoutLot(UUID id) {
        var left = new LinkedHashMap<>(reports);
        left.values().removeIf(report -> report.lot().equals(id));
        return changed(parts -> {
            parts.lots = without(lots, id);
            parts.reports = left;
            parts.attachments =
                    attachments(about -> !about.equals(id) && (!reports.containsKey(about) || left.containsKey(about)));
            parts.fedNow = fedWithout(id);
            parts.wishes = wishesWithout(id);
            parts.energyPicks = without(energyPicks, id);
        });
    }

    /** The report goes, and with it the file that it came in. */
    public Ranch withoutReport(UUID id) {
        return changed(parts -> {
            parts.reports = without(reports, id);
            parts.attachments = attachments(about -> !about.equals(id));
        });
    }

    private Map<UUID, Attachment> attachments(Predicate<UUID> isKept) {
        var left = new LinkedHashMap<>(attachments);
        left.values().removeIf(attachment -> !isKept.test(attachment.about()));
        return left;
    }

    public Ranch withoutField(UUID id) {
        return changed(parts -> parts.fields = without(fields, id));
    }

    /** The feed goes, and with it what is fed of it now. */
    public Ranch withoutFeedForSale(UUID id) {
        return changed(parts -> {
            parts.feedsForSale = without(feedsForSale, id);
            parts.fedNow = fedWithout(id);
            parts.wishes = wishesWithout(id);
        });
    }

    public Ranch withoutSampling(UUID id) {
        return changed(parts -> parts.samplings = without(samplings, id));
    }

    public Ranch withoutWater(UUID id) {
        return changed(parts -> parts.waters = without(waters, id));
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
                wanted.limitsOff(),
                wanted.way(),
                wanted.surenessPercent()));
        return left;
    }

    private Ranch changed(Consumer<Parts> change) {
        var parts = new Parts(this);
        change.accept(parts);
        return parts.ranch(id);
    }

    /** A ranch while some of it is exchanged; it is checked again as a whole when it is a ranch again. */
    private static final class Parts {
        private String name;
        private Settings settings;
        private Map<UUID, Group> groups;
        private Map<UUID, Lot> lots;
        private Map<UUID, LabReport> reports;
        private Map<UUID, Field> fields;
        private Map<UUID, FeedForSale> feedsForSale;
        private Outfit outfit;
        private Map<UUID, FedNow> fedNow;
        private Map<UUID, Wishes> wishes;
        private LastWinter lastWinter;
        private Map<UUID, Letter> letters;
        private Map<UUID, Attachment> attachments;
        private Map<UUID, Sampling> samplings;
        private @Nullable StationWinters winters;
        private Map<UUID, WaterSource> waters;
        private Map<UUID, EnergyPicks> energyPicks;
        private @Nullable Contacts contacts;
        private Map<UUID, Pen> pens;
        private Map<UUID, SignedLetter> signed;
        private Map<UUID, FedWeek> weeks;

        Parts(Ranch ranch) {
            name = ranch.name;
            settings = ranch.settings;
            groups = ranch.groups;
            lots = ranch.lots;
            reports = ranch.reports;
            fields = ranch.fields;
            feedsForSale = ranch.feedsForSale;
            outfit = ranch.outfit;
            fedNow = ranch.fedNow;
            wishes = ranch.wishes;
            lastWinter = ranch.lastWinter;
            letters = ranch.letters;
            attachments = ranch.attachments;
            samplings = ranch.samplings;
            winters = ranch.winters;
            waters = ranch.waters;
            energyPicks = ranch.energyPicks;
            contacts = ranch.contacts;
            pens = ranch.pens;
            signed = ranch.signed;
            weeks = ranch.weeks;
        }

        Ranch ranch(UUID id) {
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
                    waters,
                    energyPicks,
                    contacts,
                    pens,
                    signed,
                    weeks);
        }
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

    /**
     * Winters as they were at the ranch's place, or that its station's record gave: the latest last; none where neither is
     * known.
     */
    public List<KeptWinter> knownWinters() {
        var weather = settings.weather();
        if (weather != null && weather.found() != null) {
            return weather.found().weather().keptWinters();
        }
        return winters == null ? List.of() : winters.winters();
    }

    /** How cold those were, as every page and command tells it: estimated ones to the last digit, others as kept. */
    public List<MeanWinter> winterMeans() {
        var weather = settings.weather();
        return weather != null && weather.found() != null
                ? weather.found().weather().winters()
                : knownWinters().stream().map(KeptWinter::asMeans).toList();
    }

    /** The field sheets of a lot, oldest first. A sheet outlives its lot: what was taken was taken. */
    public List<Sampling> samplingsOf(UUID lot) {
        return ((ByLot<Sampling>) samplings).on(lot);
    }

    /** The reports on a lot, oldest first. */
    public List<LabReport> reportsOn(UUID lot) {
        return ((ByLot<LabReport>) reports).on(lot);
    }

    private static LocalDate reported(LabReport report) {
        return report.reported() == null ? LocalDate.MIN : report.reported();
    }

    /** The day said for grass; of groups that have days of their own, the latest; null where nobody said one. */
    public @Nullable LocalDate turnout() {
        var said = settings.turnout();
        return said != null
                ? said
                : groups.values().stream()
                        .map(Group::turnout)
                        .filter(Objects::nonNull)
                        .max(Comparator.naturalOrder())
                        .orElse(null);
    }

    public int head() {
        return groups.values().stream().mapToInt(Group::head).sum();
    }
}
