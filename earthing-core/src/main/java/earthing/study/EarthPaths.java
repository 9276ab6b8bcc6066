package earthing.study;

import earthing.site.Conductor;
import earthing.site.Electrode;
import earthing.site.Joint;
import earthing.site.MainEarth;
import earthing.site.Site;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Every metallic way of the site as a graph: what is joined to what, at which height, by which member. The drawing, the
 * path rules, the circuits and the contingencies all read this one graph, so a bond cannot be shown and not modelled.
 *
 * @param members the members, main earth first from the tank down
 */
public record EarthPaths(List<Member> members) {

    /** Node of the tank's earth terminal. */
    public static final String TANK = "tank";
    /** Node of the cubicle's earth terminal. */
    public static final String CUBICLE = "cubicle";
    /** Node of remote earth; every electrode ends here. */
    public static final String EARTH = "earth";
    /** Node where the cubicle's tee leaves the main earth. */
    public static final String TEE = "tee";

    /** What a member is for. */
    public enum Role {
        /** Part of the main earth. */
        MAIN_EARTH,
        /** The tee of the cubicle. */
        TEE,
        /** A lead to an electrode of the cubicle's own. */
        OWN_LEAD,
        /** The screen of the control cable, bonded at both ends. */
        SCREEN,
        /** Meant to run beside the main earth: pole steel, bonded neutral, bonded stay, second lead. */
        PARALLEL,
        /** A way to earth that the arrangement does not intend. */
        UNINTENDED,
        /** A buried electrode. */
        ELECTRODE
    }

    /**
     * A metallic member between two nodes.
     *
     * @param name name, unique
     * @param from node at its upper end
     * @param to node at its lower end
     * @param fromHeight height of the upper end [m]
     * @param toHeight height of the lower end [m]
     * @param role what it is for
     * @param conductor its conductor, where it has one
     * @param joint joint at its lower end, where declared
     * @param intact false for a member that is drawn but found missing
     */
    public record Member(
            String name,
            String from,
            String to,
            double fromHeight,
            double toHeight,
            Role role,
            Optional<Conductor> conductor,
            Optional<Joint> joint,
            boolean intact) {

        /**
         * Length along a straight vertical run.
         *
         * @return length [m]
         */
        public double length() {
            return Math.abs(fromHeight - toHeight);
        }

        /**
         * Whether it is a bond that the site file names, or a part of one.
         *
         * @param bond name of a segment, {@code main-earth}, {@code own-lead} or {@code tee}
         * @return true if a continuity reading over that bond goes through this member
         */
        public boolean isPartOf(String bond) {
            return switch (bond) {
                case "main-earth" -> role == Role.MAIN_EARTH;
                case "own-lead" -> role == Role.OWN_LEAD;
                default ->
                    name.equals(bond) || name.equals(bond + " above the tee") || name.equals(bond + " below the tee");
            };
        }

        private Member parted() {
            return new Member(name, from, to, fromHeight, toHeight, role, conductor, joint, false);
        }

        private Optional<String> otherEnd(String node) {
            if (node.equals(from)) {
                return Optional.of(to);
            }
            return node.equals(to) ? Optional.of(from) : Optional.empty();
        }
    }

    /**
     * Copies the members.
     *
     * @param members the members, main earth first from the tank down
     */
    public EarthPaths {
        members = List.copyOf(members);
    }

    /**
     * The node of an electrode.
     *
     * @param name name of the electrode in the site file
     * @return its node
     */
    public static String electrodeNode(String name) {
        return "electrode " + name;
    }

    /**
     * A name as part of an id.
     *
     * @param name any name
     * @return lower case, everything but letters and digits turned into single hyphens
     */
    public static String key(String name) {
        StringBuilder key = new StringBuilder();
        for (char c : name.toLowerCase(Locale.ROOT).toCharArray()) {
            if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9')) {
                key.append(c);
            } else if (!key.isEmpty() && key.charAt(key.length() - 1) != '-') {
                key.append('-');
            }
        }
        return key.toString();
    }

    /**
     * Reads the graph off a site.
     *
     * @param site the site
     * @return its members
     */
    public static EarthPaths of(Site site) {
        return new EarthPaths(new EarthPathReader(site).read());
    }

    /**
     * Name of the electrode that the main earth ends on.
     *
     * @param site the site
     * @return the declared one, else the first of the file
     */
    public static Optional<String> mainElectrode(Site site) {
        MainEarth main = site.mainEarth();
        String declared = main == null ? null : main.electrode();
        if (declared != null) {
            return Optional.of(declared);
        }
        return site.electrodes().stream().findFirst().map(Electrode::name);
    }

    /**
     * A member by name.
     *
     * @param name its name
     * @return the member
     */
    public Optional<Member> member(String name) {
        return members.stream().filter(m -> m.name().equals(name)).findFirst();
    }

    /**
     * All members of a role.
     *
     * @param role the role
     * @return the members in order
     */
    public List<Member> withRole(Role role) {
        return members.stream().filter(m -> m.role() == role).toList();
    }

    /**
     * The graph with one member broken.
     *
     * @param name name of the member
     * @return the graph in which it is not intact
     */
    public EarthPaths broken(String name) {
        return new EarthPaths(members.stream()
                .map(m -> m.name().equals(name) ? m.parted() : m)
                .toList());
    }

    /**
     * Every way from a node to another along intact members that passes no node twice.
     *
     * @param from first node
     * @param to last node
     * @return the ways, the shortest first, each as the members passed
     */
    public List<List<Member>> ways(String from, String to) {
        List<List<Member>> found = new ArrayList<>();
        extend(from, to, new LinkedHashSet<>(Set.of(from)), new ArrayList<>(), found);
        found.sort(Comparator.comparingInt(List::size));
        return found;
    }

    private void extend(String at, String to, Set<String> passed, List<Member> way, List<List<Member>> found) {
        if (at.equals(to)) {
            found.add(List.copyOf(way));
            return;
        }
        for (Member member : members) {
            if (!member.intact()) {
                continue;
            }
            Optional<String> next = member.otherEnd(at);
            if (next.isPresent() && passed.add(next.get())) {
                way.add(member);
                extend(next.get(), to, passed, way, found);
                way.remove(way.size() - 1);
                passed.remove(next.get());
            }
        }
    }

    /**
     * Whether an intact way leads from a node to another.
     *
     * @param from first node
     * @param to last node
     * @return true if there is one
     */
    public boolean connected(String from, String to) {
        Set<String> reached = new LinkedHashSet<>(Set.of(from));
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Member member : members) {
                if (member.intact() && (reached.contains(member.from()) != reached.contains(member.to()))) {
                    reached.add(member.from());
                    reached.add(member.to());
                    grown = true;
                }
            }
        }
        return reached.contains(to);
    }
}
