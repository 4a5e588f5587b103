namespace McuBench.Core.Boards;

/// <summary>What an attachment was doing while trials ran.</summary>
public enum AttachmentState
{
    /// <summary>Switched off, yet connected.</summary>
    Off,

    /// <summary>On, doing nothing: a radio that is associated and silent, a display that keeps its picture.</summary>
    Idle,

    /// <summary>On and at work.</summary>
    Active,
}
