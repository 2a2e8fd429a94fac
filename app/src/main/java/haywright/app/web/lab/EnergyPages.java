package haywright.app.web.lab;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.words.Show;
import haywright.forage.Analyte;
import haywright.forage.energy.EnergyChoice;
import haywright.forage.energy.WaysToTdn;
import haywright.forage.lot.LotComposition;
import haywright.outlook.SameHay;
import haywright.ranch.Lot;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/** Which TDN is used for a lot: as printed, by the book, as used, and the form to pick another. */
public final class EnergyPages {
    public static final Ask WAY = Ask.choice(
            "way", "Use for this lot", "TDN (total digestible nutrients) carries the energy of every ration.");

    private static final String RULE = "";

    private EnergyPages() {}

    public static void routes(Routes on) {
        on.postBeside("reports/lot/{lot}/energy", EnergyPages::save);
    }

    /**
     * @param printed "61.0 %"; empty where no report prints it; with a word where it could not be taken
     * @param book likewise
     * @param used likewise, with what it is by
     * @param spread "55.0 to 61.2 % by 5 equations"; empty where fewer than two fit
     */
    public record View(
            Lot lot, Form form, String printed, String book, String used, String spread, List<Option> ways) {}

    /** @param page the lot's own */
    public static View view(Page page, Lot lot) {
        return view(page, lot, page.form(key(lot), () -> Map.of(WAY.name(), picked(page, lot))));
    }

    private static String picked(Page page, Lot lot) {
        var laboratory = page.yard().composition(lot).energy().laboratory();
        return page.ranch().energyPicks(lot.id()).ways().entrySet().stream()
                .filter(p -> p.getKey().equalsIgnoreCase(laboratory.strip()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse(RULE);
    }

    private static View view(Page page, Lot lot, Form form) {
        var made = page.yard().composition(lot);
        var energy = made.energy();
        return new View(
                lot,
                form,
                printed(page, lot, energy),
                energy.book().isPresent() ? say(energy.book().getAsDouble()) : "",
                used(made),
                spread(energy.ways()),
                ways(energy));
    }

    /** What a report prints and the checks leave out is printed all the same. */
    private static String printed(Page page, Lot lot, EnergyChoice energy) {
        if (energy.printed().isPresent()) {
            return say(energy.printed().get().percent());
        }
        var newestFirst = new ArrayList<>(SameHay.counted(page.ranch(), lot.id()));
        Collections.reverse(newestFirst);
        var lines = AsPrinted.of(Analyte.TDN, newestFirst);
        return lines.isEmpty()
                ? ""
                : String.join("; ", lines) + ". It could not be taken as it stands: see the notes below";
    }

    private static String key(Lot lot) {
        return "reports/lot/" + lot.id() + "/energy";
    }

    private static String say(double percent) {
        return Figures.say(Analyte.TDN, percent);
    }

    private static String used(LotComposition made) {
        var energy = made.energy();
        return energy.used()
                .map(tdn -> "%s, %s%s"
                        .formatted(
                                say(tdn.percent()),
                                words(energy),
                                tdn.residual()
                                        .map(r -> ", give or take %s points".formatted(r.said()))
                                        .orElse("")))
                .orElse("");
    }

    private static String words(EnergyChoice energy) {
        var by = switch (energy.way()) {
            case EnergyChoice.LABORATORY -> "the laboratory’s own";
            case EnergyChoice.BOOK -> "the feed book’s";
            default ->
                energy.ways().stream()
                        .filter(w -> w.id().equals(energy.way()))
                        .map(w -> "by " + w.name())
                        .findFirst()
                        .orElse("what such lots usually have");
        };
        return by + (energy.picked() ? ", as you picked" : "");
    }

    private static String spread(List<WaysToTdn.Way> ways) {
        return ways.size() < 2
                ? ""
                : "%s to %s by %d equations made for such feed"
                        .formatted(
                                Show.number(ways.get(0).tdn().percent(), 1),
                                say(ways.get(ways.size() - 1).tdn().percent()),
                                ways.size());
    }

    private static List<Option> ways(EnergyChoice energy) {
        var ways = new ArrayList<Option>();
        ways.add(new Option(
                RULE,
                "The rule: a line that was read for this feed, else the laboratory’s own, else a line from memory"));
        energy.printed()
                .ifPresent(tdn ->
                        ways.add(new Option(EnergyChoice.LABORATORY, "The laboratory’s own: " + say(tdn.percent()))));
        energy.ways()
                .forEach(way -> ways.add(new Option(
                        way.id(),
                        "By %s: %s (%s)"
                                .formatted(
                                        way.name(),
                                        say(way.tdn().percent()),
                                        OtherWays.source(way).known().words()))));
        energy.book().ifPresent(tdn -> ways.add(new Option(EnergyChoice.BOOK, "The feed book’s: " + say(tdn))));
        return ways;
    }

    private static void save(Page page) {
        var lot = ReportPages.lot(page);
        var form = page.posted(key(lot));
        var energy = page.yard().composition(lot).energy();
        var way = form.value(WAY).strip();
        if (ways(energy).stream().noneMatch(o -> o.value().equals(way))) {
            form.refuse(WAY.name(), way, "this lot’s figures do not allow this way", "Choose one of the list.");
            page.reject(form, "haywright/app/web/lab/energyAgain.jte", view(page, lot, form));
            return;
        }
        page.save(
                form,
                "TDN picked: " + lot.name(),
                ranch -> ranch.with(ranch.energyPicks(lot.id()).with(energy.laboratory(), way)),
                "reports/lot/" + lot.id());
    }
}
