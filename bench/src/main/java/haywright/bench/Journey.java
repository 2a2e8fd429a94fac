package haywright.bench;

import haywright.app.document.TinLantern;
import haywright.app.server.Server;
import haywright.app.store.Home;
import haywright.app.store.Store;
import haywright.app.web.Desk;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Comparator;

/**
 * From an empty round to the first feed letter and a winter book: an invented ranch of 150 cows, its bred heifers and weaned
 * calves, three hays of which one was tested, and a feed to buy, entered as somebody would who has read nothing. Prints
 * clicks, typed fields, fields shown and refused saves. Ends with 1 if a save is refused or no letter comes.
 */
final class Journey {
    private static final String SHEET = """
            Lone Pump Forage Laboratory (invented)
            Date sampled: 10/20/2026      Date reported: 10/29/2026
            Sample ID: North meadow

                                      As Received     Dry Matter
            Moisture, %                  11.8
            Dry matter, %                88.2           100.0
            Crude protein, %              7.6             8.6
            ADF, %                       35.2            39.9
            NDF, %                       55.7            63.2
            TDN, %                       48.6            55.1
            Calcium, %                    0.40            0.45
            Phosphorus, %                 0.15            0.17
            """;

    private Journey() {}

    public static void main(String[] args) throws Exception {
        var folder = Files.createTempDirectory("haywright-bench");
        var clock = Clock.fixed(Instant.parse("2026-11-25T12:00:00Z"), ZoneOffset.UTC);
        var store = Store.inFolder(folder, clock);
        var home = Home.in(folder);
        var server = Server.start(new Desk(store, clock, TinLantern::ranch), home, "127.0.0.1", 0, routes -> {});
        boolean done;
        try {
            done = walk(new Person("http://127.0.0.1:" + server.port(), "/?key=" + home.key()));
        } finally {
            server.close();
            store.close();
            try (var files = Files.walk(folder)) {
                for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
        System.exit(done ? 0 : 1);
    }

    private static boolean walk(Person person) throws Exception {
        person.press("Add the ranch", "name", "Wet Boot Ranch", "town", "Burwell, NE", "turnout", "May 10")
                .click("Add the first lot")
                .click("Bales")
                .press(
                        "another like it",
                        "name",
                        "North meadow",
                        "feedClass",
                        "grass_hay",
                        "bale",
                        "large_round",
                        "count",
                        "310 bales",
                        "baleWeight",
                        "1,250#",
                        "storage",
                        "outside_on_ground",
                        "replacementPrice",
                        "$140/ton")
                .press(
                        "another like it",
                        "name",
                        "Second cutting",
                        "feedClass",
                        "legume_hay",
                        "count",
                        "96",
                        "baleWeight",
                        "1350 lbs",
                        "replacementPrice",
                        "185")
                .press(
                        "Save the lot",
                        "name",
                        "Millet",
                        "feedClass",
                        "cereal_hay",
                        "count",
                        "80",
                        "replacementPrice",
                        "")
                .click("Add a feed to buy")
                .press("Save the feed", "name", "20% cake", "price", "$365/T");
        System.out.println("Lots and a feed to buy   " + person.counts());
        person.click("Bring in lab reports").press("Read it", "text", SHEET).press("Keep it", "howSampled", "plan");
        System.out.println("The sheet                " + person.counts());
        person.click("Herd")
                .click("Mature cows")
                .press(
                        "another group",
                        "name",
                        "Cows",
                        "head",
                        "150 cows",
                        "weight",
                        "1,300 lb",
                        "conditionScore",
                        "5½",
                        "calvingFirst",
                        "3/15")
                .click("Bred heifers")
                .press(
                        "another group",
                        "name",
                        "Bred heifers",
                        "head",
                        "28",
                        "weight",
                        "1,050#",
                        "conditionScore",
                        "5 1/2",
                        "calvingFirst",
                        "1 March")
                .click("Growing cattle")
                .press("Save the group", "name", "Calves", "head", "60 hd", "weight", "540", "conditionScore", "5");
        System.out.println("The herd                 " + person.counts());
        person.click("Letter").click("Cows");
        boolean isLetter = person.page().contains("North meadow");
        System.out.println("The letter               " + person.counts());
        person.press(
                "Put these on the letters",
                "adviser",
                "Jo Fenn",
                "adviserPhone",
                "308-555-0142",
                "veterinarian",
                "Dr. Ruiz",
                "veterinarianPhone",
                "308-555-0177");
        person.click("Winter book");
        boolean isBook = person.page().contains("id=\"book\"");
        System.out.println("Phones, winter book      " + person.counts());
        return isLetter && isBook && person.refused() == 0;
    }
}
