package haywright.app.cli;

import haywright.app.words.Feeding;
import haywright.app.words.HerdWords;
import haywright.app.words.Show;
import haywright.app.words.ration.LimitWords;
import haywright.app.words.ration.RegainWords;
import haywright.app.words.ration.RuleWords;
import haywright.cattle.herd.Group;
import haywright.diet.PoorestDiet;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.forage.Analyte;
import haywright.forage.Basis;
import haywright.forage.lab.LabReport;
import haywright.forage.lab.Reading;
import haywright.forage.lab.ReportCheck;
import haywright.outlook.LotTons;
import haywright.outlook.TestedFor;
import haywright.outlook.Yard;
import haywright.quantity.Unit;
import haywright.ranch.Lot;
import haywright.ration.MixDifference;
import haywright.ration.NoRation;
import haywright.ration.Ration;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The chain of a whole ranch on its day, from the stacks to each group's ration, as a terminal shows it. */
final class DemoChain {
    private final Rations rations;
    private final Yard yard;
    private final PrintWriter out;

    DemoChain(Rations rations, PrintWriter out) {
        this.rations = rations;
        yard = rations.yard();
        this.out = out;
    }

    void print() {
        var ranch = yard.ranch();
        out.printf("%s on %s.", ranch.name(), Show.date(yard.day()));
        out.println(ranch.settings().invented() ? " The ranch and all its figures are invented." : "");
        heading("Lots");
        ranch.lots().values().forEach(this::lot);
        ranch.lots().values().stream()
                .flatMap(lot -> ranch.reportsOn(lot.id()).stream())
                .findFirst()
                .ifPresent(this::report);
        heading("What each group needs, per head per day");
        out.println("  " + figured(false));
        out.printf("  %-64s %8s %8s %8s %8s %8s%n", "", "NEm Mcal", "NEg Mcal", "protein", "Ca g", "P g");
        ranch.groups().values().forEach(this::need);
        heading("Rations, per head per day, pounds as they are put out");
        out.println("  " + figured(true));
        ranch.groups().values().forEach(this::ration);
        var leftOut = ranch.groups().values().stream()
                .flatMap(group -> rations.question(group).diet().leftOut().stream())
                .map(left -> left.why() + ". " + left.fix())
                .distinct()
                .toList();
        if (!leftOut.isEmpty()) {
            heading("Left out of them");
            leftOut.forEach(why -> out.printf("  %s%n", why));
        }
    }

    private String figured(boolean putOut) {
        return HerdWords.figured(yard.ranch(), yard.ranch().groups().values(), yard.day(), yard.day(), putOut);
    }

    private void heading(String words) {
        out.printf("%n%s%n", words);
    }

    private void lot(Lot lot) {
        boolean nitrateKnown = yard.composition(lot).composition().knows(Analyte.NO3N);
        out.printf(
                "  %-28s %-20s %11s  %-16s %s%s%n",
                lot.name(),
                lot.feedClass().words(),
                LotTons.of(lot).kg().isPresent()
                        ? Show.tons(LotTons.of(lot).kg().getAsDouble())
                        : "not cut",
                lot.replacementPrice() == null ? "" : Show.price(lot.replacementPrice(), yard.dryMatter(lot)),
                TestedFor.of(yard.ranch(), lot).words().toLowerCase(Locale.ROOT),
                lot.isNitrateDanger() && !nitrateKnown ? ", and its nitrate is not known" : "");
    }

    private void report(LabReport report) {
        var lot = yard.ranch().lots().get(report.lot());
        if (lot == null) {
            return;
        }
        heading("One report read: %s%s".formatted(lot.name(), by(report)));
        var checked = ReportCheck.check(lot.feedClass(), yard.composition(lot).row(), report.readings());
        out.printf("  %-32s %16s %16s%n", "", "as received", "on dry matter");
        for (var analyte :
                report.readings().stream().map(Reading::analyte).distinct().toList()) {
            var received = report.readings().stream()
                    .filter(r -> r.analyte() == analyte && (r.basis() == Basis.AS_RECEIVED || !analyte.hasBasis()))
                    .map(r -> Show.worked(r.value(), r.unit()))
                    .findFirst()
                    .orElse("");
            var value = checked.values().get(analyte);
            out.printf(
                    "  %-32s %16s %16s%n",
                    analyte.words(),
                    received,
                    value == null || !analyte.hasBasis() ? "" : Show.worked(value, analyte.unit()));
        }
        checked.issues().forEach(issue -> out.printf("  %s. %s%n", issue.words(), issue.fix()));
        var joined = yard.composition(lot).composition();
        for (var analyte : List.of(Analyte.TDN, Analyte.NEM, Analyte.RFV)) {
            joined.value(analyte)
                    .ifPresent(v -> out.printf(
                            "  %-32s %16s %16s  worked out here%n",
                            analyte.words(), "", Show.withUnit(Show.significant(v, 3), analyte.unit())));
        }
    }

    private static String by(LabReport report) {
        var day = report.reported() == null ? "" : ", " + Show.date(report.reported());
        return report.laboratory().isBlank() ? day : day + ", " + report.laboratory();
    }

    private void need(Group group) {
        var need = yard.need(group);
        out.printf(
                "  %-64s %8s %8s %8s %8s %8s%n",
                called(group),
                Show.number(need.nem(), 1),
                need.neg() > 0 ? Show.number(need.neg(), 1) : "",
                Show.pounds(PoorestDiet.of(need).map(PoorestDiet::crudeProtein).orElse(need.crudeProtein())),
                Show.number(need.calcium(), 0),
                Show.number(need.phosphorus(), 0));
    }

    private static String called(Group group) {
        return group.name() + ", " + Show.withUnit(Show.number(group.head(), 0), Unit.HEAD);
    }

    private void ration(Group group) {
        out.printf("%n  %s%n", called(group));
        var meanwhile = rations.meanwhile(group);
        // as the bench judges it: by what the group is to come to, which a wish that cannot be kept does not change
        meanwhile
                .map(without -> without.of())
                .orElse(rations)
                .fedNow(group)
                .ifPresent(now -> out.printf(
                        "    Fed today: %s%s%n",
                        Show.dollars(now.cost()),
                        LimitWords.shortfalls(now, List.of()).stream()
                                .map(", "::concat)
                                .collect(Collectors.joining())));
        var answer = rations.ration(group);
        if (answer instanceof Ration ration) {
            made(rations, group, ration);
        } else {
            notMade((NoRation) answer);
            meanwhile.ifPresent(without -> {
                out.println("    Until then, without it:");
                made(without.of(), group, without.ration());
            });
        }
    }

    private void made(Rations of, Group group, Ration ration) {
        var mix = of.weighable(group, ration);
        // so that they add up to what is below them
        var together = MixDifference.between(List.of(), mix.portions()).parts().stream()
                .collect(Collectors.toMap(part -> part.feed().feed().id(), MixDifference.Part::cents));
        for (var portion : mix.portions()) {
            var put = new Feeding(portion.kgPutOut(), group.head(), yard.baleKg(portion));
            out.printf(
                    "    %-28s %9s  %s  %s%s%n",
                    portion.feed().feed().name(),
                    put.aHead(),
                    Show.dollars(together.getOrDefault(portion.feed().feed().id(), 0L) / 100.0),
                    put.aDay(),
                    put.bales(false).map(bales -> ", " + bales).orElse(""));
        }
        double cents = Math.rint(100 * mix.cost());
        out.printf(
                "    Costs %s per head per day, %s for all%n",
                Show.dollars(cents / 100), Show.dollars(cents * group.head() / 100));
        var offers = new Offers(of, group);
        RegainWords.ofIt(offers).ifPresent(words -> out.printf("    %s.%n", Show.capital(words)));
        RegainWords.beside(offers).ifPresent(words -> out.printf("    %s%n", words));
        offers.sure().ifPresent(sure -> out.printf("    Enough %s.%n", Show.timesInTen(sure.holdsPercent())));
        for (var portion : mix.portions()) {
            of.lastsUntil(portion.feed())
                    .ifPresent(day -> out.printf(
                            "    %s lasts until %s, fed so to all groups.%n",
                            portion.feed().feed().name(), Show.date(day)));
        }
        RuleWords.beside(yard.need(group), ration).forEach(sentence -> out.printf("    %s%n", sentence));
        ration.limits().stream()
                .filter(LimitWords::isTight)
                .forEach(limit ->
                        out.printf("    Where it's tight: %s. %s%n", limit.row().name(), LimitWords.tight(limit)));
    }

    private void notMade(NoRation none) {
        out.println("    No mix works yet:");
        none.conflicts().forEach(conflict -> out.printf("      %s%n", LimitWords.inTheWay(conflict.row(), none)));
        out.println("    What would fix it:");
        LimitWords.lifts(none, none.diet().need()).forEach(lift -> out.printf("      %s%n", lift));
    }
}
