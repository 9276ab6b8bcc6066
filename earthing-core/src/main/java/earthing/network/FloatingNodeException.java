package earthing.network;

/** A potential was asked of a node that no branch connects to the reference; it has none. */
public final class FloatingNodeException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** The node that floats. */
    private final String node;

    /**
     * Names the node.
     *
     * @param node the node that floats
     */
    public FloatingNodeException(String node) {
        super("cannot be computed: node " + node + " floats, no branch leads from it to the reference");
        this.node = node;
    }

    /**
     * The node that floats.
     *
     * @return node name
     */
    public String node() {
        return node;
    }
}
