package haywright.app.web.winter;

import haywright.app.exchange.sheet.SheetFile;
import haywright.app.report.WagonCard;
import haywright.app.report.phone.PhoneWeek;
import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.words.Measures;
import haywright.app.words.Show;
import haywright.cattle.herd.Group;
import haywright.ranch.Lot;
import haywright.ranch.SheetCode;
import haywright.season.week.WeekLine;
import haywright.workings.Refused;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The week's boxes on a phone, and a line that came back of it, which fills in the form; a person then saves it. */
final class WeekPhone {
    static final Ask LINE = Ask.text("line", "The line from the phone", "Its last letter catches typing mistakes.");

    private final Page page;
    private final List<Group> groups;
    private final List<Lot> lots;

    /** @param lots that a week has boxes for */
    WeekPhone(Page page, List<Lot> lots) {
        this.page = page;
        groups = List.copyOf(page.ranch().groups().values());
        this.lots = lots;
    }

    private String code() {
        return SheetCode.ofWeek(Stream.concat(
                        groups.stream().map(group -> group.id().toString()),
                        lots.stream().map(lot -> lot.id() + unit(lot)))
                .toList());
    }

    private static String unit(Lot lot) {
        return lot.stock().bales() > 0 ? "bales" : Measures.tons();
    }

    String file() {
        return new PhoneWeek(
                        code(),
                        "%s · made %s".formatted(page.ranch().name(), Show.date(page.today())),
                        groups.stream()
                                .map(group -> new PhoneWeek.OfGroup(group.name(), today(group)))
                                .toList(),
                        lots.stream()
                                .map(lot -> new PhoneWeek.OfLot(
                                        lot.name(), lot.stock().bales() > 0 ? "bales" : Measures.tons()))
                                .toList())
                .page();
    }

    String fileName() {
        return "week-" + code();
    }

    private String today(Group group) {
        try {
            var lines = new WagonCard(page.offers(group)).lines();
            return lines.isEmpty()
                    ? ""
                    : "The card of today: "
                            + lines.stream()
                                    .map(line -> line.feed() + " " + line.pounds())
                                    .collect(Collectors.joining(", "))
                            + " in one load.";
        } catch (Refused e) {
            return "";
        }
    }

    /** What the line says, by the boxes of the form; empty where it is wrong, and then the form says what. */
    Optional<Map<String, String>> read(Form form) {
        var text = SheetFile.line(form.text(LINE, "Paste the line."));
        return form.buildFrom(LINE, () -> boxes(WeekLine.read(text)));
    }

    private Map<String, String> boxes(WeekLine line) {
        if (!line.sheet().equals(code())
                || line.tenths().size() > groups.size() * (PhoneWeek.DAYS + 1) + lots.size() * PhoneWeek.OF_A_LOT) {
            throw new Refused(
                    LINE.name(),
                    line.sheet(),
                    "this sheet is of another ranch, or of this one with other groups or lots, so its figures cannot be told apart",
                    "Enter them from the phone, and save the sheet for the phone again.");
        }
        var boxes = new LinkedHashMap<String, String>();
        int last = -1;
        int at = 0;
        for (var group : groups) {
            var days = new ArrayList<String>();
            for (int day = 0; day < PhoneWeek.DAYS; day++) {
                var pounds = figure(line, at++);
                if (pounds.isPresent()) {
                    days.add(pounds.get());
                    last = Math.max(last, day);
                }
            }
            var of = WeekPages.boxes(group);
            put(boxes, of.card(), days.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", days)));
            put(boxes, of.score(), figure(line, at++));
        }
        for (var lot : lots) {
            var of = WeekPages.boxes(lot);
            for (var box : List.of(of.fed(), of.left(), of.refused())) {
                put(boxes, box, figure(line, at++));
            }
        }
        boxes.put(WeekPages.FROM.name(), Show.date(line.first()));
        boxes.put(WeekPages.TO.name(), Show.date(to(line.first(), last)));
        return boxes;
    }

    /** The last day that pounds were fed on; of a line with none, the end of its week as far as it has come. */
    private LocalDate to(LocalDate first, int last) {
        if (last >= 0) {
            return first.plusDays(last);
        }
        var end = first.plusDays(PhoneWeek.DAYS - 1L);
        return end.isAfter(page.today()) && !first.isAfter(page.today()) ? page.today() : end;
    }

    private static void put(Map<String, String> boxes, Ask box, Optional<String> value) {
        value.ifPresent(figure -> boxes.put(box.name(), figure));
    }

    private static Optional<String> figure(WeekLine line, int at) {
        var tenths = at < line.tenths().size() ? line.tenths().get(at) : OptionalInt.empty();
        return tenths.isPresent()
                ? Optional.of(BigDecimal.valueOf(tenths.getAsInt(), 1)
                        .stripTrailingZeros()
                        .toPlainString())
                : Optional.empty();
    }
}
