//! What a line means, and the kind of line that ISO 128 gives that meaning.

/// What a line or text on a drawing is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Layer {
    /// Cut here.
    Cut,
    /// Bend here.
    Fold,
    /// Holes to drill.
    Drill,
    /// Axes and hole centres.
    Centre,
    /// Outline of a part that lies there, and visible edges.
    Outline,
    /// Edges that are covered.
    Hidden,
    /// Dimension lines, hatching, leaders.
    Dimension,
    /// Rulers that prove the scale.
    Ruler,
    /// Marks by which sheets are joined.
    Register,
    /// Words.
    Note,
}

/// Kind of line: dashes, and wide or narrow.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LineKind {
    /// Continuous wide (ISO 128 type 01.2).
    ContinuousWide,
    /// Continuous narrow (01.1).
    ContinuousNarrow,
    /// Dashed narrow (02.1): hidden edges.
    Dashed,
    /// Long-dashed dotted narrow (04.1): centre lines.
    ChainCentre,
    /// Long-dashed double-dotted narrow (05.1): here, bending lines.
    ChainFold,
}

impl Layer {
    /// Every layer.
    pub const ALL: [Self; 10] = [
        Self::Cut,
        Self::Fold,
        Self::Drill,
        Self::Centre,
        Self::Outline,
        Self::Hidden,
        Self::Dimension,
        Self::Ruler,
        Self::Register,
        Self::Note,
    ];

    /// Its name in a drawing file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cut => "CUT",
            Self::Fold => "FOLD",
            Self::Drill => "DRILL",
            Self::Centre => "CENTRE",
            Self::Outline => "OUTLINE",
            Self::Hidden => "HIDDEN",
            Self::Dimension => "DIMENSION",
            Self::Ruler => "RULER",
            Self::Register => "REGISTER",
            Self::Note => "NOTE",
        }
    }

    /// The kind of line that its lines are drawn with.
    #[must_use]
    pub const fn line(self) -> LineKind {
        match self {
            Self::Cut | Self::Outline => LineKind::ContinuousWide,
            Self::Fold => LineKind::ChainFold,
            Self::Centre => LineKind::ChainCentre,
            Self::Hidden => LineKind::Dashed,
            Self::Drill | Self::Dimension | Self::Ruler | Self::Register | Self::Note => {
                LineKind::ContinuousNarrow
            }
        }
    }
}

impl LineKind {
    /// Every kind.
    pub const ALL: [Self; 5] = [
        Self::ContinuousWide,
        Self::ContinuousNarrow,
        Self::Dashed,
        Self::ChainCentre,
        Self::ChainFold,
    ];

    /// Width in micrometres: the line group 0.35 mm of ISO 128, wide to narrow
    /// as two to one.
    #[must_use]
    pub const fn width_um(self) -> u32 {
        match self {
            Self::ContinuousWide => 350,
            _ => 180,
        }
    }

    /// Dashes and gaps in micrometres, in turn; none for a continuous line.
    ///
    /// ISO 128: a dash is 12 line widths, a long dash 24, a gap 3, a dot at
    /// most half a width, here one so that it survives a coarse printer.
    #[must_use]
    pub const fn dashes_um(self) -> &'static [u32] {
        match self {
            Self::ContinuousWide | Self::ContinuousNarrow => &[],
            Self::Dashed => &[2_160, 540],
            Self::ChainCentre => &[4_320, 540, 180, 540],
            Self::ChainFold => &[4_320, 540, 180, 540, 180, 540],
        }
    }
}
