package earthing.report;

import earthing.report.document.Block;
import java.util.List;

/** The cautions that stand at the head and the foot of every report. */
final class Cautions {

    static final List<String> HEAD = List.of(
            "This report is an aid to a decision. A competent and licensed person is responsible for the design, the work and the release.",
            "Local codes and the owner's rules govern; where they differ from this report, they prevail.",
            "Earth leads and electrodes may be live, also on a pole that looks dead. Never disconnect or cut an earth on energised plant.",
            "Stop outdoor work at thunder.");

    static final List<String> FOOT = List.of(
            "Touch and step voltages here are power-frequency results. They say nothing about a person near the pole during a lightning stroke.",
            "This report must not be used to justify removing an earth, or working without isolation and earthing.",
            "It is valid for the inputs and the editions of the criteria listed in it, and for nothing else. Test again after any change to the pole, the earth, the protection or the network.",
            "Earth leads and electrodes may be live. Never disconnect an earth on energised plant. Stop outdoor work at thunder.",
            "A competent and licensed person is responsible; local codes and the owner's rules govern.");

    private Cautions() {}

    static Block head() {
        return new Block.Caution("Read before use", HEAD);
    }

    static Block foot() {
        return new Block.Caution("Limits of use", FOOT);
    }

    static List<String> all() {
        return java.util.stream.Stream.concat(HEAD.stream(), FOOT.stream())
                .distinct()
                .toList();
    }
}
