package haywright.app.report;

import haywright.ranch.Contacts;
import haywright.ranch.Ranch;

/** Who is called about the cattle of a ranch, with the number where it was entered: {@code Ida Voss (308.555.0173)}. */
record WhomToCall(Ranch ranch) {
    String adviser() {
        var name = ranch.settings().adviser();
        return (name.isBlank() ? "your adviser" : name.replaceAll("\\s*\\(.*\\)\\s*$", ""))
                + phone(contacts().adviserPhone());
    }

    String vet() {
        var name = contacts().veterinarian();
        return (name.isBlank() ? "the vet" : name) + phone(contacts().veterinarianPhone());
    }

    private Contacts contacts() {
        var said = ranch.contacts();
        return said == null ? Contacts.NOT_SAID : said;
    }

    /** As one number; empty where there is none. */
    private static String phone(String typed) {
        var digits = typed.strip().replaceAll("[^0-9+]+", ".").replaceAll("^\\.+|\\.+$", "");
        return digits.isEmpty() ? "" : " (" + digits + ")";
    }
}
